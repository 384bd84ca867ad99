import {
  type CivilDate,
  computeWindow,
  type DoneRecord,
  type DueWindow,
  type IntervalDefinition,
  type IntervalRule,
} from "@roundbook/schemas";
import { duration } from "./fact-words.ts";
import { readNext } from "./score-edit.ts";

/** An interval as a form edits it. */
export interface IntervalFields {
  title: string;
  assetType: string;
  checklist: string;
  /** "kept" for a rule that this form shows in words and does not change. */
  kind: "from-last-done" | "by-result" | "kept";
  kept: IntervalRule | null;
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
  kept: null,
  every: "6",
  unit: "M",
  early: "",
  late: "",
  score: "",
  basis: "",
};

const splitDuration = (iso: string): Pick<IntervalFields, "every" | "unit"> => {
  const match = /^P(\d+)([YMWD])$/.exec(iso);
  if (match) return { every: match[1] ?? "", unit: match[2] as IntervalFields["unit"] };
  const mixed = /^P(\d+)Y(\d+)M$/.exec(iso);
  return { every: mixed ? String(Number(mixed[1]) * 12 + Number(mixed[2])) : "", unit: "M" };
};

/** "14" where it is days; what is counted otherwise in words, so that the form loses nothing. */
const days = (iso: string | undefined): string => {
  if (iso === undefined) return "";
  const match = /^P(\d+)([DW])$/.exec(iso);
  return match ? String(Number(match[1]) * (match[2] === "W" ? 7 : 1)) : duration(iso);
};

export const toIntervalFields = (definition: IntervalDefinition): IntervalFields => {
  const { title, assetType, checklist, rule, basis = "" } = definition;
  const around = { ...EMPTY_INTERVAL, title, assetType, checklist, basis };
  if (rule.neverAfter !== undefined || rule.whenClosed !== undefined)
    return { ...around, kind: "kept", kept: rule };
  switch (rule.kind) {
    case "from-last-done":
    case "by-result":
      return {
        ...around,
        kind: rule.kind,
        early: days(rule.early),
        late: days(rule.late),
        ...(rule.kind === "from-last-done" ? splitDuration(rule.every) : { score: rule.score }),
      };
    default:
      return { ...around, kind: "kept", kept: rule };
  }
};

const whole = (text: string): number | null =>
  /^\d{1,4}$/.test(text.trim()) ? Number(text.trim()) : null;

/** "14", "2 weeks" or "1 month"; undefined for none, null for what is neither. */
const margin = (text: string): string | undefined | null => {
  if (text.trim() === "") return undefined;
  const count = whole(text);
  if (count !== null) return count === 0 ? undefined : `P${count}D`;
  const next = readNext(text);
  return next === undefined || next === "at-once" ? null : next;
};

export const isMargin = (text: string): boolean => margin(text) !== null;
export const isEvery = (text: string): boolean => (whole(text) ?? 0) > 0;

/** The rule as written; null while something that it needs is missing or cannot be read. */
export const ruleOf = (fields: IntervalFields): IntervalRule | null => {
  if (fields.kind === "kept") return fields.kept;
  const early = margin(fields.early);
  const late = margin(fields.late);
  if (early === null || late === null) return null;
  const margins = { ...(early ? { early } : {}), ...(late ? { late } : {}) };
  if (fields.kind === "by-result")
    return fields.score === "" ? null : { kind: "by-result", score: fields.score, ...margins };
  if (!isEvery(fields.every)) return null;
  const every = `P${Number(fields.every)}${fields.unit}`;
  return { kind: "from-last-done", every, ...margins };
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
  const done: DoneRecord[] = [];
  let on = from;
  for (let turn = 0; turn < count; turn += 1) {
    const next = rule.kind === "by-result" ? { [rule.score]: byResult } : {};
    done.push({ entry: "", on, at: null, counts: true, next });
    const window = computeWindow(rule, { done, registered: from });
    windows.push(window);
    on = window.due;
  }
  return windows;
};
