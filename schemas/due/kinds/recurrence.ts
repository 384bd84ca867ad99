import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import type { Calendar } from "../calendar.ts";
import { addDuration, subtractDuration } from "../duration.ts";
import { rolledBack } from "../policy.ts";
import { requireDate } from "../require-date.ts";
import { type NextOccurrence, nextAfter, occurrencesFrom } from "../rrule/occurrences.ts";
import { readRrule } from "../rrule/read-rrule.ts";
import type { RuleOf } from "../rule-schema.ts";
import { type DoneRecord, NO_DATE } from "../window.ts";
import { explain, facts, type Span } from "./span.ts";

type Rule = RuleOf<"recurrence">;

const opens = ({ early }: Rule, day: CivilDate): CivilDate =>
  early === undefined ? day : subtractDuration(day, early);

/**
 * The first occurrence that what was done on a day does not count for. It counts for the one of
 * that day, for those that roll back to it or before it, and, where there are none of these, for
 * the one whose window is open.
 */
function following(rule: Rule, day: CivilDate, calendar?: Calendar): NextOccurrence {
  const series = occurrencesFrom(readRrule(rule.rrule), requireDate(rule.start), day);
  for (let used = false; ; used = true) {
    const next = series.next();
    if (next.done) return { ended: next.value };
    const date = next.value;
    const isThen = date === day || rolledBack(rule, date, calendar) <= day;
    if (!isThen && (used || opens(rule, date) > day)) return { date };
  }
}

const spanOf = (
  rule: Rule,
  record: DoneRecord | null,
  next: NextOccurrence,
  why: Explanation,
): Span => {
  if ("ended" in next) {
    const over = explain("recurrence-over", { rrule: rule.rrule, reason: next.ended });
    return { record, earliest: NO_DATE, due: NO_DATE, latest: NO_DATE, why: over };
  }
  const due = next.date;
  const latest = rule.late === undefined ? due : addDuration(due, rule.late);
  return { record, earliest: opens(rule, due), due, latest, why };
};

/** Due on the first occurrence that was not done; what was missed is not made up for. */
export const recurrence = (rule: Rule, record: DoneRecord, calendar?: Calendar): Span =>
  spanOf(
    rule,
    record,
    following(rule, record.on, calendar),
    explain("recurrence", { rrule: rule.rrule, ...facts(record) }),
  );

/** Never done: due on the first occurrence from its registration on. */
export function firstRecurrence(rule: Rule, registered: CivilDate): Span {
  const { rrule, start } = rule;
  const next = nextAfter(readRrule(rrule), requireDate(start), (registered - 1) as CivilDate);
  return spanOf(rule, null, next, explain("recurrence-first", { rrule, start }));
}
