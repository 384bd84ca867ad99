import { at, type Problem, problem } from "../shared/problem.ts";
import type { CalendarData } from "./calendar-schema.ts";
import { parseCivilDate } from "./civil.ts";

/** 2024 has a 29 February. */
const ofAnyYear = (monthAndDay: string): string => `2024-${monthAndDay}`;

/** Days of a calendar that no month has, and closures that end before they begin. */
export function calendarProblems({
  holidays = [],
  closures = [],
  seasons = [],
}: CalendarData): Problem[] {
  const problems: Problem[] = [];
  const check = (pointer: string, date: string, iso = date) => {
    if (parseCivilDate(iso) === undefined)
      problems.push(problem(pointer, "no-such-date", { date }));
  };
  for (const [index, { date }] of holidays.entries()) check(at("/holidays", index, "date"), date);
  for (const [index, { from, to }] of closures.entries()) {
    check(at("/closures", index, "from"), from);
    check(at("/closures", index, "to"), to);
    if (from > to)
      problems.push(problem(at("/closures", index, "to"), "ends-before", { from, to }));
  }
  for (const [index, { from, to }] of seasons.entries()) {
    check(at("/seasons", index, "from"), from, ofAnyYear(from));
    check(at("/seasons", index, "to"), to, ofAnyYear(to));
  }
  return problems;
}
