import {
  formatCivilDate,
  type IntervalDefinition,
  type IntervalRule,
  type ParticularDefinitions,
  parseCivilDate,
  type RuleOf,
} from "@roundbook/schemas";
import { beginRisk } from "./interval-risk.ts";

/** An interval as it is written: of a definition's shape, with "" for what is still to be said. */
export type IntervalDraft = IntervalDefinition;
export type RuleKind = IntervalRule["kind"];

/** In the order they are offered: the common ones first. */
export const RULE_KINDS = [
  "from-last-done",
  "anniversary",
  "each-period",
  "recurrence",
  "spacing",
  "by-result",
  "by-risk",
  "on-usage",
  "on-event",
] as const satisfies readonly RuleKind[];

export interface Around {
  /** ISO civil date. */
  readonly today: string;
  readonly particulars?: ParticularDefinitions;
}

/** A rule of each kind as it begins. */
export const beginRule = (kind: RuleKind, { today, particulars = {} }: Around): IntervalRule => {
  switch (kind) {
    case "from-last-done":
      return { kind, every: "P6M" };
    case "by-result":
      return { kind, score: "" };
    case "anniversary":
      return { kind, every: "P1Y", within: "P1M", afterLate: "restart" };
    case "each-period":
      return { kind, period: "month" };
    case "spacing":
      return { kind, min: "P3W", max: "P5W" };
    case "recurrence":
      return { kind, rrule: "FREQ=MONTHLY;BYDAY=-1FR", start: today };
    case "on-event":
      return { kind, after: ["repaired"], within: "P0D" };
    case "on-usage":
      return { kind, point: "", every: 250, unit: "h" };
    case "by-risk":
      return beginRisk(particulars);
  }
};

export const beginInterval = (assetType = "", checklist = ""): IntervalDraft => ({
  title: "",
  assetType,
  checklist,
  rule: { kind: "from-last-done", every: "P6M" },
});

/** Lengths that are the same thing in a rule of another kind. */
const SHARED = ["every", "early", "late", "neverAfter", "first", "onDayOff", "whenClosed"] as const;

/** The same interval by another kind of rule: what both kinds can say is kept. */
export const asKind = (draft: IntervalDraft, kind: RuleKind, around: Around): IntervalDraft => {
  if (draft.rule.kind === kind) return draft;
  const begun = beginRule(kind, around);
  const before: Readonly<Record<string, unknown>> = draft.rule;
  const margins = ["from-last-done", "by-result", "recurrence", "by-risk"];
  const kept = SHARED.filter((name) => {
    if (typeof before[name] !== "string") return false;
    if (name === "every") return kind === "from-last-done" || kind === "anniversary";
    if (name === "early") return margins.includes(kind) || kind === "on-event";
    if (name === "late") return margins.includes(kind) || kind === "anniversary";
    return true;
  });
  const rule = { ...begun, ...Object.fromEntries(kept.map((name) => [name, before[name]])) };
  return { ...draft, rule: rule as IntervalRule };
};

/** A rule with some members changed; undefined takes one away. */
export const withMembers = <Kind extends RuleKind>(
  rule: RuleOf<Kind>,
  members: Partial<RuleOf<Kind>>,
): RuleOf<Kind> => {
  const merged = { ...rule, ...members };
  const told = Object.entries(merged).filter(([, value]) => value !== undefined);
  return Object.fromEntries(told) as unknown as RuleOf<Kind>;
};

const text = (value: unknown): string => (typeof value === "string" ? value : "");

/** Whether a member that was kept is of the shape it begins with; an object has all of its members. */
const isAlike = (value: unknown, begun: unknown): boolean => {
  if (typeof value !== typeof begun || Array.isArray(value) !== Array.isArray(begun)) return false;
  if (typeof value !== "object" || value === null) return value !== null;
  const held = value as Readonly<Record<string, unknown>>;
  return (
    Array.isArray(value) ||
    Object.entries(begun as object).every(([name, one]) => name in held && isAlike(held[name], one))
  );
};

/** A draft as the server kept it; what it lacks, or what is not of its kind, begins anew. */
export const readDraft = (kept: object, { today }: Pick<Around, "today">): IntervalDraft => {
  const { title, assetType, checklist, basis, covers, rule } = kept as Record<string, unknown>;
  const given = (typeof rule === "object" && rule !== null ? rule : {}) as Record<string, unknown>;
  const known = RULE_KINDS.find((one) => one === given.kind);
  const begun: Readonly<Record<string, unknown>> = {
    ...beginRule(known ?? "from-last-done", { today }),
  };
  const sound = Object.entries(known ? given : {}).filter(
    ([name, value]) => !(name in begun) || isAlike(value, begun[name]),
  );
  return {
    title: text(title),
    assetType: text(assetType),
    checklist: text(checklist),
    rule: { ...begun, ...Object.fromEntries(sound) } as IntervalRule,
    ...(text(basis) === "" ? {} : { basis: text(basis) }),
    ...(Array.isArray(covers) && covers.length > 0 ? { covers: covers.map(String) } : {}),
  };
};

/** Pointers to what is still to be said before the dates can be told. */
export const lacking = ({ assetType, checklist, rule }: IntervalDraft): string[] => [
  ...(assetType === "" ? ["/assetType"] : []),
  ...(checklist === "" ? ["/checklist"] : []),
  ...(rule.kind === "by-result" && rule.score === "" ? ["/rule/score"] : []),
  ...(rule.kind === "on-usage" && rule.point === "" ? ["/rule/point"] : []),
  ...(rule.kind === "by-risk" && rule.table.inputs.includes("") ? ["/rule/table/inputs"] : []),
];

/** "2026-10-13" of the reader's clock. */
export const civilToday = (now: Date): string => {
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const DAY = /^\s*(\d{1,2})\s+([a-z]{3})[a-z]*\.?\s+(\d{4})\s*$/i;
const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** "31 October 2026" or "2026-10-31" as an ISO civil date. */
export const readDate = (written: string): string | undefined => {
  const [, day = "", month = "", year = ""] = DAY.exec(written) ?? [];
  const number = MONTHS.indexOf(month.toLowerCase()) + 1;
  const iso =
    day === ""
      ? written.trim()
      : `${year}-${String(number).padStart(2, "0")}-${day.padStart(2, "0")}`;
  const date = parseCivilDate(iso);
  return date === undefined ? undefined : formatCivilDate(date);
};
