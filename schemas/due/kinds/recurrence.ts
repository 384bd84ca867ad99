import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { addDuration, subtractDuration } from "../duration.ts";
import { requireDate } from "../require-date.ts";
import { type NextOccurrence, nextAfter } from "../rrule/occurrences.ts";
import { readRrule } from "../rrule/read-rrule.ts";
import type { RuleOf } from "../rule-schema.ts";
import { type DoneRecord, NO_DATE } from "../window.ts";
import { explain, facts, type Span } from "./span.ts";

type Rule = RuleOf<"recurrence">;

const opens = ({ early }: Rule, day: CivilDate): CivilDate =>
  early === undefined ? day : subtractDuration(day, early);

/** The first occurrence after a day whose window opens after it too: one done inside it is done. */
function following(rule: Rule, day: CivilDate): NextOccurrence {
  const start = requireDate(rule.start);
  for (let from = day; ; ) {
    const next = nextAfter(readRrule(rule.rrule), start, from);
    if ("ended" in next || opens(rule, next.date) > day) return next;
    from = next.date;
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

/** Any day from the opening of an occurrence's window on counts for it. */
export const recurrence = (rule: Rule, record: DoneRecord): Span =>
  spanOf(
    rule,
    record,
    following(rule, record.on),
    explain("recurrence", { rrule: rule.rrule, ...facts(record) }),
  );

/** Never done: due on the first occurrence from its registration on. */
export function firstRecurrence(rule: Rule, registered: CivilDate): Span {
  const { rrule, start } = rule;
  const next = nextAfter(readRrule(rrule), requireDate(start), (registered - 1) as CivilDate);
  return spanOf(rule, null, next, explain("recurrence-first", { rrule, start }));
}
