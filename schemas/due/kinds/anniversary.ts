import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { formatCivilDate, LAST_CIVIL_DATE } from "../civil.ts";
import { addDuration, addTimes, type Duration, durationOf } from "../duration.ts";
import { requireDate } from "../require-date.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { fromLastDone } from "./from-record.ts";
import { explain, facts, type Span } from "./span.ts";

type Rule = RuleOf<"anniversary">;

/** The first day of the time that ends with the deadline and counts it: two months ending on 10 February begin on 11 December. */
const opens = (within: Duration, deadline: CivilDate): CivilDate =>
  Math.min(addTimes(deadline, within, -1) + 1, deadline) as CivilDate;

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

/** What the last day did to the count: sentences are made of it once, at the end. */
type Turn = "begun" | "kept" | "kept-late" | "restarted-early" | "restarted-late";

interface Count {
  readonly anchor: CivilDate;
  readonly cycle: number;
  readonly turn: Turn;
  /** The deadline that the last day was held against. */
  readonly deadline: CivilDate;
}

function next(rule: Rule, every: Duration, within: Duration, count: Count, day: CivilDate): Count {
  const { anchor, cycle } = count;
  const deadline = addTimes(anchor, every, cycle);
  if (day > deadline)
    return rule.afterLate === "keep"
      ? { anchor, cycle: cyclesPast(anchor, every, cycle, day), turn: "kept-late", deadline }
      : { anchor: day, cycle: 1, turn: "restarted-late", deadline };
  return day < opens(within, deadline)
    ? { anchor: day, cycle: 1, turn: "restarted-early", deadline }
    : { anchor, cycle: cycle + 1, turn: "kept", deadline };
}

function sentence(rule: Rule, within: Duration, count: Count, record: DoneRecord): Explanation {
  const about = { every: rule.every, ...facts(record) };
  const deadline = formatCivilDate(count.deadline);
  switch (count.turn) {
    case "begun":
      return fromLastDone({ kind: "from-last-done", every: rule.every }, record).why;
    case "kept":
    case "kept-late": {
      const anchor = formatCivilDate(count.anchor);
      return explain(`anniversary-${count.turn}`, { ...about, deadline, anchor });
    }
    case "restarted-late":
      return explain("anniversary-restarted-late", { ...about, deadline });
    case "restarted-early": {
      const open = formatCivilDate(opens(within, count.deadline));
      return explain("anniversary-restarted-early", { ...about, opens: open });
    }
  }
}

/** The first deadline of a fixed series that lies on or after a day. */
function deadlineFrom(anchor: CivilDate, every: Duration, day: CivilDate): number {
  if (day <= anchor) return 0;
  const cycle = cyclesPast(anchor, every, 1, day);
  return addTimes(anchor, every, cycle - 1) === day ? cycle - 1 : cycle;
}

/** Done for the first time: the day itself begins the count, or a fixed series goes on past it. */
function begin(rule: Rule, every: Duration, day: CivilDate): Count {
  if (rule.anchor === undefined) return { anchor: day, cycle: 1, turn: "begun", deadline: day };
  const anchor = requireDate(rule.anchor);
  const within = durationOf(rule.within);
  const cycle = deadlineFrom(anchor, every, day);
  const deadline = addTimes(anchor, every, cycle);
  const kept = day >= opens(within, deadline);
  return { anchor, cycle: kept ? cycle + 1 : cycle, turn: "kept", deadline };
}

/** Of a fixed series and never done: due on its first date from the registration on. */
export function firstAnniversary(rule: Rule, anchor: string, registered: CivilDate): Span {
  const every = durationOf(rule.every);
  const from = requireDate(anchor);
  const due = addTimes(from, every, deadlineFrom(from, every, registered));
  return {
    record: null,
    earliest: opens(durationOf(rule.within), due),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: explain("anniversary-first", { every: rule.every, anchor }),
  };
}

/**
 * Every deadline is counted from one anchor, so month ends do not drift. Done inside the window the
 * next is one cycle on; done sooner the count begins anew that day; done late, as the rule says.
 * `days` ascend, each once, and end with the day of `record`.
 */
export function anniversary(rule: Rule, days: readonly CivilDate[], record: DoneRecord): Span {
  const every = durationOf(rule.every);
  const within = durationOf(rule.within);
  const [first = record.on, ...later] = days;
  let count = begin(rule, every, first);
  for (const day of later) count = next(rule, every, within, count, day);
  const due = addTimes(count.anchor, every, count.cycle);
  return {
    record,
    earliest: opens(within, due),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: sentence(rule, within, count, record),
  };
}
