import { type CivilDate, civilParts, parseCivilDate, weekday } from "@roundbook/schemas";
import { MONTHS, WEEKDAYS } from "./calendar.ts";

const NO_BREAK = "\u00a0";
const month = (number: number): string => MONTHS[number - 1] ?? "";
const dayName = (date: CivilDate): string => WEEKDAYS[weekday(date) - 1] ?? "";
const short = (name: string): string => name.slice(0, 3);

/** "13 October", with the year when it is not the reader's: "13 October 2027". */
export function dayAndMonth(date: CivilDate, today?: CivilDate): string {
  const parts = civilParts(date);
  const sameYear = today !== undefined && civilParts(today).year === parts.year;
  return `${parts.day}${NO_BREAK}${month(parts.month)}${sameYear ? "" : ` ${parts.year}`}`;
}

/** "13 October 2026" of an ISO civil date; what is none stays as it is. */
export function dateWords(iso: string): string {
  const day = parseCivilDate(iso);
  return day === undefined ? iso : dayAndMonth(day);
}

/** "Tuesday 13 October"; the year is added when it is not the reader's. */
export const longDay = (date: CivilDate, today: CivilDate = date): string =>
  `${dayName(date)} ${dayAndMonth(date, today)}`;

/** "30 Apr", or "30 Apr 2025" in another year than the reader's. */
export function shortDay(date: CivilDate, today: CivilDate = date): string {
  const parts = civilParts(date);
  const year = civilParts(today).year === parts.year ? "" : ` ${parts.year}`;
  return `${parts.day}${NO_BREAK}${short(month(parts.month))}${year}`;
}

/** "Fri 30" within a month of the reader's day, else "30 Nov". */
export function nearDay(date: CivilDate, today: CivilDate): string {
  if (date - today < 0 || date - today > 30) return shortDay(date, today);
  return `${short(dayName(date))}${NO_BREAK}${civilParts(date).day}`;
}

export interface DaysOfWindow {
  readonly earliest: CivilDate;
  readonly latest: CivilDate;
}

/** "from 4 Jan" · "by Fri 30" · "today" (the last day) · "4 days over". */
export function dueWords({ earliest, latest }: DaysOfWindow, today: CivilDate): string {
  if (today < earliest) return `from ${shortDay(earliest, today)}`;
  if (today < latest) return `by ${nearDay(latest, today)}`;
  if (today === latest) return "today";
  const over = today - latest;
  return `${over}${NO_BREAK}${over === 1 ? "day" : "days"} over`;
}
