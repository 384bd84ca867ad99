import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import type { Calendar } from "../calendar.ts";
import { formatCivilDate, LAST_CIVIL_DATE } from "../civil.ts";
import { addDuration, addTimes, type Duration, durationOf } from "../duration.ts";
import { meanDays } from "../mean-days.ts";
import { putOff } from "../policy.ts";
import { requireDate } from "../require-date.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { fromLastDone } from "./from-record.ts";
import { explain, facts, type Span } from "./span.ts";

type Rule = RuleOf<"anniversary">;

/** The first day of the time that ends with the deadline and counts it: two months ending on 10 February begin on 11 December. */
export const opens = (within: Duration, deadline: CivilDate): CivilDate =>
  Math.min(addTimes(deadline, within, -1) + 1, deadline) as CivilDate;

/** Whether a day up to the deadline lies before the window that ends with it. */
function isTooSoon(within: Duration, deadline: CivilDate, day: CivilDate): boolean {
  const left = deadline - day;
  // Most days are told without looking at the calendar: a month has 28 days or more.
  if (left < within.months * 28 + within.days) return false;
  return day < opens(within, deadline);
}

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
type Turn = "begun" | "stands" | "kept" | "kept-late" | "restarted-early" | "restarted-late";

interface Count {
  readonly anchor: CivilDate;
  readonly cycle: number;
  readonly turn: Turn;
  /** On the series that the rule fixes. */
  readonly fixed: boolean;
  /** The deadline that the last day was held against. */
  readonly deadline: CivilDate;
}

interface Series {
  readonly rule: Rule;
  readonly every: Duration;
  readonly within: Duration;
  readonly calendar: Calendar | undefined;
}

/** The last day that keeps a deadline: past a shut one it is put off to, as long as the law allows. */
function lastKept({ rule, calendar }: Series, deadline: CivilDate, before: CivilDate): CivilDate {
  const day = putOff(rule, deadline, calendar);
  const { neverAfter } = rule;
  return neverAfter !== undefined && day > addDuration(before, neverAfter) ? deadline : day;
}

/** `before` is the day it was done before `day`. */
function next(series: Series, count: Count, day: CivilDate, before: CivilDate): Count {
  const { rule, every, within } = series;
  const { anchor, cycle, fixed } = count;
  // Done again for a deadline that is kept already.
  if (count.turn === "kept" && day <= count.deadline) return count;
  const deadline = addTimes(anchor, every, cycle);
  if (day > deadline && day > lastKept(series, deadline, before))
    return rule.afterLate === "keep"
      ? { anchor, cycle: cyclesPast(anchor, every, cycle, day), turn: "kept-late", fixed, deadline }
      : { anchor: day, cycle: 1, turn: "restarted-late", fixed: false, deadline };
  if (!isTooSoon(within, deadline, day))
    return { anchor, cycle: cycle + 1, turn: "kept", fixed, deadline };
  return fixed
    ? { ...count, turn: "stands", deadline }
    : { anchor: day, cycle: 1, turn: "restarted-early", fixed, deadline };
}

function sentence(rule: Rule, within: Duration, count: Count, record: DoneRecord): Explanation {
  const { every } = rule;
  const { date, entry } = facts(record);
  const deadline = formatCivilDate(count.deadline);
  switch (count.turn) {
    case "begun":
      return fromLastDone({ kind: "from-last-done", every: rule.every }, record).why;
    case "kept":
    case "kept-late": {
      const anchor = formatCivilDate(count.anchor);
      return explain(`anniversary-${count.turn}`, { every, deadline, anchor, date, entry });
    }
    case "stands": {
      const anchor = formatCivilDate(count.anchor);
      const open = formatCivilDate(opens(within, count.deadline));
      return explain("anniversary-stands", { every, deadline, anchor, opens: open, date, entry });
    }
    case "restarted-late":
      return explain("anniversary-restarted-late", { every, deadline, date, entry });
    case "restarted-early": {
      const open = formatCivilDate(opens(within, count.deadline));
      return explain("anniversary-restarted-early", { every, opens: open, date, entry });
    }
  }
}

/** The cycle of the first deadline of a fixed series on or after a day; the series has no beginning. */
function deadlineFrom(anchor: CivilDate, { every, rule }: Series, day: CivilDate): number {
  const days = meanDays(rule.every);
  if (days === 0) return 0;
  // Months are never further from their mean than two of them.
  let cycle = Math.floor((day - anchor) / days) - 2;
  while (addTimes(anchor, every, cycle) < day) cycle += 1;
  return cycle;
}

/** Done for the first time: the day itself begins the count, or a fixed series goes on past it. */
function begin(series: Series, day: CivilDate): Count {
  const { rule, every, within } = series;
  if (rule.anchor === undefined)
    return { anchor: day, cycle: 1, turn: "begun", fixed: false, deadline: day };
  const anchor = requireDate(rule.anchor);
  const cycle = deadlineFrom(anchor, series, day);
  const deadline = addTimes(anchor, every, cycle);
  return day >= opens(within, deadline)
    ? { anchor, cycle: cycle + 1, turn: "kept", fixed: true, deadline }
    : { anchor, cycle, turn: "stands", fixed: true, deadline };
}

/** Of a fixed series and never done: due on its first date from the registration on. */
export function firstAnniversary(rule: Rule, anchor: string, registered: CivilDate): Span {
  const every = durationOf(rule.every);
  const within = durationOf(rule.within);
  const from = requireDate(anchor);
  const series: Series = { rule, every, within, calendar: undefined };
  const due = addTimes(from, every, deadlineFrom(from, series, registered));
  return {
    record: null,
    earliest: opens(within, due),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: explain("anniversary-first", { every: rule.every, anchor }),
  };
}

/**
 * Every deadline is counted from one anchor, so month ends do not drift. Done inside the window the
 * next is one cycle on; done sooner the count begins anew that day, or a fixed series stands; done
 * late, as the rule says. `days` ascend, each once, and end with the day of `record`.
 */
export function anniversary(
  rule: Rule,
  days: readonly CivilDate[],
  record: DoneRecord,
  calendar?: Calendar,
): Span {
  const every = durationOf(rule.every);
  const within = durationOf(rule.within);
  const series: Series = { rule, every, within, calendar };
  let before = days[0] ?? record.on;
  let count = begin(series, before);
  for (let index = 1; index < days.length; index += 1) {
    const day = days[index] ?? record.on;
    count = next(series, count, day, before);
    before = day;
  }
  const due = addTimes(count.anchor, every, count.cycle);
  return {
    record,
    earliest: opens(within, due),
    due,
    latest: rule.late === undefined ? due : addDuration(due, rule.late),
    why: sentence(rule, within, count, record),
  };
}
