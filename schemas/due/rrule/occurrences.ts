import type { CivilDate } from "../../shared/ids.ts";
import { FIRST_CIVIL_DATE, LAST_CIVIL_DATE } from "../civil.ts";
import { expand } from "./expand.ts";
import type { Rrule, RruleEnd } from "./rrule.ts";
import { firstDayOf, periodsOfCycle, unitOf } from "./units.ts";

export type NextOccurrence = { readonly date: CivilDate } | { readonly ended: RruleEnd };

function requireDate(date: number): void {
  if (!(Number.isInteger(date) && date >= FIRST_CIVIL_DATE && date <= LAST_CIVIL_DATE))
    throw new RangeError(`no four-digit year on day ${date}`);
}

/** The period that a day lies in or behind, counted from DTSTART's; never below 0. */
const periodOf = (rule: Rrule, dtstart: CivilDate, day: number): number =>
  Math.max(0, Math.floor((unitOf(rule, day) - unitOf(rule, dtstart)) / rule.interval));

/**
 * Occurrences from `from` on, none sought after `to`. A COUNT has to be counted from DTSTART; all
 * else jumps to the period.
 */
function* walk(
  rule: Rrule,
  dtstart: CivilDate,
  from: number,
  to: CivilDate = LAST_CIVIL_DATE,
): Generator<CivilDate, RruleEnd, undefined> {
  requireDate(dtstart);
  const origin = unitOf(rule, dtstart);
  const until = Math.min(rule.until ?? to, to);
  const end = until < LAST_CIVIL_DATE ? "until-passed" : "calendar-ends";
  const cycle = periodsOfCycle(rule);
  // One period earlier: SKIP=FORWARD can give the first day of this one.
  let period = rule.count === null ? Math.max(0, periodOf(rule, dtstart, from) - 1) : 0;
  let last = dtstart - 1;
  let left = rule.count ?? Number.POSITIVE_INFINITY;
  for (let empty = 0; empty <= cycle; period += 1) {
    const unit = origin + period * rule.interval;
    // SKIP=BACKWARD can give the day before a unit.
    if (firstDayOf(rule, unit) - 1 > until) return end;
    const days = expand(rule, unit, dtstart);
    empty = days.length === 0 ? empty + 1 : 0;
    for (const day of days) {
      if (day <= last) continue;
      if (day > until) return end;
      last = day;
      left -= 1;
      if (day >= from) yield day as CivilDate;
      if (left === 0) return "count-reached";
    }
  }
  return "never-again";
}

/**
 * The days a rule gives, ascending, from DTSTART on. DTSTART is the first of them, and counts in
 * COUNT, where the rule gives it. Where it does not, RFC 5545 §3.8.5.3 leaves the outcome
 * undefined: here DTSTART is then no occurrence and is not counted, but still says what the rule
 * leaves open (weekday, day, month, first period). Ends with the reason; a rule that no day fits
 * ends after one cycle of the calendar.
 * @throws RangeError when DTSTART lies outside the years 0000 to 9999.
 */
export const occurrences = (
  rule: Rrule,
  dtstart: CivilDate,
): Generator<CivilDate, RruleEnd, undefined> => walk(rule, dtstart, dtstart);

interface Counted {
  readonly dtstart: CivilDate;
  readonly days: readonly CivilDate[];
  readonly ended: RruleEnd;
}

/** Dates of counted rules, which are found from DTSTART only; longer ones are walked each time. */
const counted = new WeakMap<Rrule, Counted>();
const MOST_KEPT = 5000;

function countedDays(rule: Rrule, dtstart: CivilDate): Counted {
  const known = counted.get(rule);
  if (known?.dtstart === dtstart) return known;
  const days: CivilDate[] = [];
  const all = walk(rule, dtstart, dtstart);
  for (;;) {
    const next = all.next();
    if (next.done) {
      const found = { dtstart, days, ended: next.value };
      counted.set(rule, found);
      return found;
    }
    days.push(next.value);
  }
}

function* keptFrom(
  { days, ended }: Counted,
  from: number,
): Generator<CivilDate, RruleEnd, undefined> {
  let [low, high] = [0, days.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((days[middle] ?? from) < from) low = middle + 1;
    else high = middle;
  }
  for (; low < days.length; low += 1) {
    const day = days[low];
    if (day !== undefined) yield day;
  }
  return ended;
}

/** As `occurrences`, those from a day on. */
export const occurrencesFrom = (
  rule: Rrule,
  dtstart: CivilDate,
  day: number,
): Generator<CivilDate, RruleEnd, undefined> =>
  rule.count === null || rule.count > MOST_KEPT
    ? walk(rule, dtstart, day)
    : keptFrom(countedDays(rule, dtstart), day);

/** The first occurrence after a day, or why there is none. @throws as `occurrences`. */
export function nextAfter(rule: Rrule, dtstart: CivilDate, day: CivilDate): NextOccurrence {
  const next = occurrencesFrom(rule, dtstart, day + 1).next();
  return next.done ? { ended: next.value } : { date: next.value };
}

/** The last occurrence up to and with a day; undefined before the first. @throws as `occurrences`. */
export function lastOnOrBefore(
  rule: Rrule,
  dtstart: CivilDate,
  day: CivilDate,
): CivilDate | undefined {
  requireDate(dtstart);
  if (rule.count !== null) return between(rule, dtstart, dtstart, day).at(-1);
  const top = Math.min(day, rule.until ?? day, LAST_CIVIL_DATE);
  if (top < dtstart) return undefined;
  const origin = unitOf(rule, dtstart);
  const cycle = periodsOfCycle(rule);
  // One period later: SKIP=BACKWARD can give the last day before it.
  let period = periodOf(rule, dtstart, top) + 1;
  for (let empty = 0; period >= 0 && empty <= cycle; period -= 1) {
    const days = expand(rule, origin + period * rule.interval, dtstart);
    empty = days.length === 0 ? empty + 1 : 0;
    const found = days.findLast((candidate) => candidate <= top);
    if (found !== undefined) return found >= dtstart ? (found as CivilDate) : undefined;
  }
  return undefined;
}

/** The occurrences of the days `from` to `to`, both included. @throws as `occurrences`. */
export function between(
  rule: Rrule,
  dtstart: CivilDate,
  from: CivilDate,
  to: CivilDate,
): CivilDate[] {
  const found: CivilDate[] = [];
  if (to < from) return found;
  for (const day of walk(rule, dtstart, from, to)) found.push(day);
  return found;
}
