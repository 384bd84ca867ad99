import type { CivilDate } from "../../shared/ids.ts";
import { civilDate, civilParts, daysInMonth, weekday } from "../civil.ts";
import type { Skip, WeekdayRule } from "./rrule.ts";

/** A month or a year: its first day and how many it has. */
export interface Span {
  readonly first: CivilDate;
  readonly length: number;
}

export const monthSpan = (year: number, month: number): Span => ({
  first: civilDate(year, month, 1),
  length: daysInMonth(year, month),
});

export const yearSpan = (year: number): Span => {
  const first = civilDate(year, 1, 1);
  return { first, length: civilDate(year + 1, 1, 1) - first };
};

/**
 * The nth day of a span, from its end where negative. Where the span has none, RFC 7529 §4.1 leaves
 * it out, or takes the valid day before it or after it: the 31st of April is 30 April or 1 May.
 */
export function nthDay({ first, length }: Span, nth: number, skip: Skip): number | undefined {
  const offset = nth > 0 ? nth - 1 : length + nth;
  if (offset >= 0 && offset < length) return first + offset;
  if (skip === "OMIT") return undefined;
  const border = offset < 0 ? first : first + length;
  return skip === "BACKWARD" ? border - 1 : border;
}

export const nthDays = (span: Span, nths: readonly number[], skip: Skip): number[] =>
  nths.map((nth) => nthDay(span, nth, skip)).filter((day) => day !== undefined);

/** Whether a day is one of the nths of the span that it lies in. */
export const isNthDay = ({ first, length }: Span, nths: readonly number[], day: number): boolean =>
  nths.includes(day - first + 1) || nths.includes(day - first - length);

/** The days of a span that BYDAY names; ordinals count within the span. */
export function weekdaysIn({ first, length }: Span, rules: readonly WeekdayRule[]): number[] {
  const days: number[] = [];
  const firstWeekday = weekday(first);
  for (const { weekday: wanted, nth } of rules) {
    const begin = (wanted - firstWeekday + 7) % 7;
    const times = Math.floor((length - 1 - begin) / 7) + 1;
    if (nth === 0) for (let week = 0; week < times; week += 1) days.push(first + begin + week * 7);
    else if (Math.abs(nth) <= times)
      days.push(first + begin + (nth > 0 ? nth - 1 : times + nth) * 7);
  }
  return days;
}

/** Whether BYDAY names a day of this span. */
export const isWeekdayIn = (
  { first, length }: Span,
  rules: readonly WeekdayRule[],
  day: number,
): boolean => {
  const own = weekday(day as CivilDate);
  const fromStart = Math.floor((day - first) / 7) + 1;
  const fromEnd = -(Math.floor((first + length - 1 - day) / 7) + 1);
  return rules.some(
    (rule) =>
      rule.weekday === own && (rule.nth === 0 || rule.nth === fromStart || rule.nth === fromEnd),
  );
};

export const monthOf = (day: number): Span => {
  const { year, month } = civilParts(day as CivilDate);
  return monthSpan(year, month);
};

export const yearOf = (day: number): Span => yearSpan(civilParts(day as CivilDate).year);
