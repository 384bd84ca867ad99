/** The sentences of an interval, by the verb in their margin. */
export type LineName =
  | "called"
  | "for"
  | "every"
  | "window"
  | "never"
  | "first"
  | "on"
  | "closed"
  | "covers"
  | "because";

const LINES: Readonly<Record<string, LineName>> = {
  title: "called",
  assetType: "for",
  checklist: "for",
  covers: "covers",
  basis: "because",
  "rule/early": "window",
  "rule/late": "window",
  "rule/within": "window",
  "rule/neverAfter": "never",
  "rule/first": "first",
  "rule/onDayOff": "on",
  "rule/whenClosed": "closed",
};

/** The sentence in which a problem can be put right; `pointer` is into the definition. */
export const lineOf = (pointer: string): LineName => {
  const [first = "", second = ""] = pointer.split("/").slice(1);
  return LINES[first === "rule" ? `rule/${second}` : first] ?? "every";
};
