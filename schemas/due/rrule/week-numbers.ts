import { weekday } from "../civil.ts";
import { yearSpan } from "./spans.ts";

/** The first day of week 1: the first week, beginning on `wkst`, with four days in the year. */
export function firstWeek(year: number, wkst: number): number {
  const { first } = yearSpan(year);
  const before = (weekday(first) - wkst + 7) % 7;
  return before <= 3 ? first - before : first + 7 - before;
}

/** The first days of the numbered weeks of a year (ISO 8601, week start free); -1 is the last. */
export function weekStarts(year: number, weeks: readonly number[], wkst: number): number[] {
  const start = firstWeek(year, wkst);
  const count = (firstWeek(year + 1, wkst) - start) / 7;
  return weeks
    .filter((week) => Math.abs(week) <= count)
    .map((week) => start + (week > 0 ? week - 1 : count + week) * 7);
}
