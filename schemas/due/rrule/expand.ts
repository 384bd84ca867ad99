import type { CivilDate } from "../../shared/ids.ts";
import { civilParts, weekday } from "../civil.ts";
import { expandYear } from "./expand-year.ts";
import type { Rrule } from "./rrule.ts";
import { isNthDay, isWeekdayIn, monthOf, monthSpan, nthDays, weekdaysIn } from "./spans.ts";
import { firstDayOf } from "./units.ts";

const allows = (list: readonly number[], value: number) =>
  list.length === 0 || list.includes(value);

function expandDay({ byMonth, byMonthDay, byDay }: Rrule, day: CivilDate): number[] {
  if (byDay.length > 0 && !byDay.some((rule) => rule.weekday === weekday(day))) return [];
  if (byMonth.length > 0 && !byMonth.includes(civilParts(day).month)) return [];
  return byMonthDay.length > 0 && !isNthDay(monthOf(day), byMonthDay, day) ? [] : [day];
}

function expandWeek({ byDay, byMonth, wkst }: Rrule, first: CivilDate, dtstart: CivilDate) {
  const weekdays = byDay.length > 0 ? byDay.map((rule) => rule.weekday) : [weekday(dtstart)];
  return weekdays
    .map((wanted) => first + ((wanted - wkst + 7) % 7))
    .filter((day) => byMonth.length === 0 || byMonth.includes(civilParts(day as CivilDate).month));
}

function expandMonth(rule: Rrule, first: CivilDate, dtstart: CivilDate): number[] {
  const { byMonth, byMonthDay, byDay, skip } = rule;
  const { year, month } = civilParts(first);
  if (!allows(byMonth, month)) return [];
  const span = monthSpan(year, month);
  if (byMonthDay.length > 0) {
    const days = nthDays(span, byMonthDay, skip);
    return byDay.length > 0 ? days.filter((day) => isWeekdayIn(monthOf(day), byDay, day)) : days;
  }
  if (byDay.length > 0) return weekdaysIn(span, byDay);
  return nthDays(span, [civilParts(dtstart).day], skip);
}

const inOrder = (days: readonly number[]): number[] =>
  days.length < 2 ? [...days] : [...new Set(days)].sort((a, b) => a - b);

/**
 * The days that a rule gives in one unit of its frequency, ascending, whether before DTSTART or
 * not: BYSETPOS counts within the whole of "one interval of the recurrence rule" (RFC 5545
 * §3.3.10). What the rule leaves open is DTSTART's: its weekday, its day, its month. A skip can
 * give the day before the unit or the day after it.
 */
export function expand(rule: Rrule, unit: number, dtstart: CivilDate): readonly number[] {
  const days = inOrder(expandUnit(rule, unit, dtstart));
  if (rule.bySetPos.length === 0 || days.length === 0) return days;
  return inOrder(
    rule.bySetPos
      .map((position) => days.at(position > 0 ? position - 1 : position))
      .filter((day) => day !== undefined),
  );
}

function expandUnit(rule: Rrule, unit: number, dtstart: CivilDate): number[] {
  switch (rule.freq) {
    case "DAILY":
      return expandDay(rule, unit as CivilDate);
    case "WEEKLY":
      return expandWeek(rule, firstDayOf(rule, unit), dtstart);
    case "MONTHLY":
      return expandMonth(rule, firstDayOf(rule, unit), dtstart);
    case "YEARLY":
      return expandYear(rule, unit, dtstart);
  }
}
