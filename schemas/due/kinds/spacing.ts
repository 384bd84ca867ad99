import type { CivilDate } from "../../shared/ids.ts";
import { formatCivilDate } from "../civil.ts";
import { addDuration } from "../duration.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, facts, type Span } from "./span.ts";

/** The last of these ascending days that came no sooner than `min` after the one counted before it. */
export function lastSpaced(min: string, days: readonly CivilDate[]): CivilDate | undefined {
  let counted: CivilDate | undefined;
  for (const day of days)
    if (counted === undefined || day >= addDuration(counted, min)) counted = day;
  return counted;
}

/** `record` is of the last day that was not too soon, `last` the last day done at all. */
export function spacing(rule: RuleOf<"spacing">, record: DoneRecord, last: CivilDate): Span {
  const latest = addDuration(record.on, rule.max);
  const due = rule.every === undefined ? latest : addDuration(record.on, rule.every);
  const tooSoon =
    last > record.on
      ? [explain("done-too-soon", { min: rule.min, date: formatCivilDate(last) })]
      : [];
  return {
    record,
    earliest: addDuration(record.on, rule.min),
    due: Math.min(due, latest) as CivilDate,
    latest,
    why: explain("by-spacing", { min: rule.min, max: rule.max, ...facts(record) }, tooSoon),
  };
}
