import type { CivilDate } from "../../shared/ids.ts";
import { civilParts, weekday } from "../civil.ts";
import type { Rrule } from "./rrule.ts";
import {
  isNthDay,
  isWeekdayIn,
  monthOf,
  monthSpan,
  nthDays,
  weekdaysIn,
  yearOf,
  yearSpan,
} from "./spans.ts";
import { weekStarts } from "./week-numbers.ts";

const EVERY_MONTH = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const EVERY_WEEKDAY = [1, 2, 3, 4, 5, 6, 7];

const inMonths = ({ byMonth }: Rrule, day: number) =>
  byMonth.length === 0 || byMonth.includes(civilParts(day as CivilDate).month);

const onMonthDays = ({ byMonthDay }: Rrule, day: number) =>
  byMonthDay.length === 0 || isNthDay(monthOf(day), byMonthDay, day);

const onYearDays = ({ byYearDay }: Rrule, day: number) =>
  byYearDay.length === 0 || isNthDay(yearOf(day), byYearDay, day);

/** Ordinals count within the month where BYMONTH stands, else within the year. */
const onWeekdays = ({ byDay, byMonth }: Rrule, day: number) =>
  byDay.length === 0 || isWeekdayIn(byMonth.length > 0 ? monthOf(day) : yearOf(day), byDay, day);

/** Days of the calendar year only: of a week across New Year each day belongs to its own year. */
function expandWeeks(rule: Rrule, year: number, dtstart: CivilDate): number[] {
  const { byWeekNo, byDay, byMonthDay, byYearDay, wkst } = rule;
  const open = byMonthDay.length > 0 || byYearDay.length > 0 ? EVERY_WEEKDAY : [weekday(dtstart)];
  const weekdays = byDay.length > 0 ? byDay.map((day) => day.weekday) : open;
  return [year - 1, year, year + 1]
    .flatMap((weekYear) => weekStarts(weekYear, byWeekNo, wkst))
    .flatMap((start) => weekdays.map((wanted) => start + ((wanted - wkst + 7) % 7)))
    .filter(
      (day) =>
        civilParts(day as CivilDate).year === year &&
        inMonths(rule, day) &&
        onMonthDays(rule, day) &&
        onYearDays(rule, day),
    );
}

/**
 * The days of a year by the table of RFC 5545 §3.3.10: the part that names days most closely gives
 * them, the others limit them. BYMONTHDAY without BYMONTH expands the year to that day of all its
 * months, as BYDAY expands it to all its weeks.
 */
export function expandYear(rule: Rrule, year: number, dtstart: CivilDate): number[] {
  const { byMonth, byWeekNo, byYearDay, byMonthDay, byDay, skip } = rule;
  if (byWeekNo.length > 0) return expandWeeks(rule, year, dtstart);
  if (byYearDay.length > 0)
    return nthDays(yearSpan(year), byYearDay, skip).filter(
      (day) => inMonths(rule, day) && onMonthDays(rule, day) && onWeekdays(rule, day),
    );
  if (byMonthDay.length > 0)
    return (byMonth.length > 0 ? byMonth : EVERY_MONTH)
      .flatMap((month) => nthDays(monthSpan(year, month), byMonthDay, skip))
      .filter((day) => onWeekdays(rule, day));
  if (byDay.length > 0) {
    const spans = byMonth.length > 0 ? byMonth.map((m) => monthSpan(year, m)) : [yearSpan(year)];
    return spans.flatMap((span) => weekdaysIn(span, byDay));
  }
  const { month, day } = civilParts(dtstart);
  return (byMonth.length > 0 ? byMonth : [month]).flatMap((m) =>
    nthDays(monthSpan(year, m), [day], skip),
  );
}
