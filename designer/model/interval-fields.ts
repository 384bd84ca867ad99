import {
  type CivilDate,
  computeWindow,
  type DueWindow,
  type IntervalDefinition,
  type IntervalRule,
} from "@roundbook/schemas";

/** An interval as a form edits it. */
export interface IntervalFields {
  title: string;
  assetType: string;
  checklist: string;
  kind: IntervalRule["kind"];
  every: string;
  unit: "D" | "W" | "M" | "Y";
  early: string;
  late: string;
  score: string;
  basis: string;
}

export const EMPTY_INTERVAL: IntervalFields = {
  title: "",
  assetType: "",
  checklist: "",
  kind: "from-last-done",
  every: "6",
  unit: "M",
  early: "",
  late: "",
  score: "",
  basis: "",
};

const splitDuration = (iso: string): Pick<IntervalFields, "every" | "unit"> => {
  const match = /^P(\d+)([YMWD])$/.exec(iso);
  return match
    ? { every: match[1] ?? "", unit: match[2] as IntervalFields["unit"] }
    : { every: "", unit: "M" };
};

const days = (iso: string | undefined): string => {
  const match = /^P(\d+)([DW])$/.exec(iso ?? "");
  return match ? String(Number(match[1]) * (match[2] === "W" ? 7 : 1)) : "";
};

export const toIntervalFields = (definition: IntervalDefinition): IntervalFields => {
  const { title, assetType, checklist, rule, basis = "" } = definition;
  return {
    ...EMPTY_INTERVAL,
    title,
    assetType,
    checklist,
    basis,
    kind: rule.kind,
    early: days(rule.early),
    late: days(rule.late),
    ...(rule.kind === "from-last-done" ? splitDuration(rule.every) : { score: rule.score }),
  };
};

const whole = (text: string): number | null =>
  /^\d{1,4}$/.test(text.trim()) ? Number(text.trim()) : null;

const margin = (text: string): string | undefined => {
  const count = whole(text);
  return count === null || count === 0 ? undefined : `P${count}D`;
};

/** The rule as written; null while a number that it needs is missing. */
export const ruleOf = (fields: IntervalFields): IntervalRule | null => {
  const early = margin(fields.early);
  const late = margin(fields.late);
  const margins = { ...(early ? { early } : {}), ...(late ? { late } : {}) };
  if (fields.kind === "by-result")
    return fields.score === "" ? null : { kind: "by-result", score: fields.score, ...margins };
  const every = whole(fields.every);
  if (every === null || every === 0) return null;
  return { kind: "from-last-done", every: `P${every}${fields.unit}`, ...margins };
};

export const definitionOf = (fields: IntervalFields): IntervalDefinition | null => {
  const rule = ruleOf(fields);
  if (!rule) return null;
  const basis = fields.basis.trim();
  return {
    title: fields.title.trim(),
    assetType: fields.assetType,
    checklist: fields.checklist,
    rule,
    ...(basis === "" ? {} : { basis }),
  };
};

/** The windows of an asset that is done on `from` and then on every due day. */
export const nextWindows = (
  rule: IntervalRule,
  from: CivilDate,
  count: number,
  byResult = "P1Y",
): DueWindow[] => {
  const windows: DueWindow[] = [];
  let on = from;
  for (let turn = 0; turn < count; turn += 1) {
    const next = rule.kind === "by-result" ? { [rule.score]: byResult } : {};
    const window = computeWindow(rule, [{ entry: "", on, at: null, counts: true, next }], from);
    windows.push(window);
    on = window.due;
  }
  return windows;
};
