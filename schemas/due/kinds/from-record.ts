import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import type { DueCode } from "../codes.ts";
import { addDuration, subtractDuration } from "../duration.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, facts, type Span } from "./span.ts";

interface Margins {
  readonly early?: string;
  readonly late?: string;
}

const withMargins = (
  { early, late }: Margins,
  record: DoneRecord,
  due: CivilDate,
  why: Explanation,
): Span => ({
  record,
  earliest: early === undefined ? due : subtractDuration(due, early),
  due,
  latest: late === undefined ? due : addDuration(due, late),
  why,
});

export function fromLastDone(rule: RuleOf<"from-last-done">, record: DoneRecord): Span {
  const code = record.counts && !record.broughtForward ? "from-last-done" : "brought-forward";
  const why = explain(code, { every: rule.every, ...facts(record) });
  return withMargins(rule, record, addDuration(record.on, rule.every), why);
}

export function byResult(rule: RuleOf<"by-result">, record: DoneRecord): Span {
  const { score } = rule;
  // An interval may have tolerances; "at once" has none.
  const atOnce = (code: DueCode): Span =>
    withMargins({}, record, record.on, explain(code, { score, ...facts(record) }));
  const next = Object.hasOwn(record.next, score) ? record.next[score] : undefined;
  if (next === "at-once") return atOnce("at-once");
  // A result that gives no interval must never make an asset silently not due.
  if (next === null || next === undefined) return atOnce("no-interval-from-result");
  const why = explain("by-result", { score, next, ...facts(record) });
  return withMargins(rule, record, addDuration(record.on, next), why);
}
