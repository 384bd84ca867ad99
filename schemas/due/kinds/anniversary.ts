import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { formatCivilDate, LAST_CIVIL_DATE } from "../civil.ts";
import { addDuration, addTimes, type Duration, durationOf, subtractDuration } from "../duration.ts";
import type { RuleOf } from "../interval-schema.ts";
import type { DoneRecord } from "../window.ts";
import { fromLastDone } from "./from-record.ts";
import { explain, facts, type Span } from "./span.ts";

type Rule = RuleOf<"anniversary">;

/** The first day of the time that ends with the deadline and counts it: two months ending on 10 February begin on 11 December. */
const opens = (rule: Rule, deadline: CivilDate): CivilDate =>
  Math.min(subtractDuration(deadline, rule.within) + 1, deadline) as CivilDate;

/** How many cycles from the anchor lead past a day; short of it only at the end of the calendar. */
function cyclesPast(anchor: CivilDate, every: Duration, cycle: number, day: CivilDate): number {
  const longest = every.months * 31 + every.days;
  if (longest === 0) return cycle;
  const left = day - addTimes(anchor, every, cycle);
  let next = cycle + Math.max(1, Math.floor(left / longest));
  for (; ; next += 1) {
    const deadline = addTimes(anchor, every, next);
    if (deadline > day || deadline === LAST_CIVIL_DATE) return next;
  }
}

/**
 * Every deadline is counted from one anchor, so month ends do not drift. Done inside the window the
 * next is one cycle on; done sooner the count begins anew that day; done late, as the rule says.
 * `days` ascend, each once, and end with the day of `record`.
 */
export function anniversary(rule: Rule, days: readonly CivilDate[], record: DoneRecord): Span {
  const every = durationOf(rule.every);
  const about = { every: rule.every, ...facts(record) };
  let anchor = days[0] ?? record.on;
  let cycle = 1;
  let why: Explanation = fromLastDone({ kind: "from-last-done", every: rule.every }, record).why;
  for (const day of days.slice(1)) {
    const end = addTimes(anchor, every, cycle);
    const deadline = formatCivilDate(end);
    const kept = { ...about, deadline, anchor: formatCivilDate(anchor) };
    const open = opens(rule, end);
    if (day < open) {
      why = explain("anniversary-restarted-early", { ...about, opens: formatCivilDate(open) });
    } else if (day <= end) {
      cycle += 1;
      why = explain("anniversary-kept", kept);
      continue;
    } else if (rule.afterLate === "keep") {
      cycle = cyclesPast(anchor, every, cycle, day);
      why = explain("anniversary-kept-late", kept);
      continue;
    } else {
      why = explain("anniversary-restarted-late", { ...about, deadline });
    }
    anchor = day;
    cycle = 1;
  }
  const due = addTimes(anchor, every, cycle);
  return {
    record,
    earliest: opens(rule, due),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why,
  };
}
