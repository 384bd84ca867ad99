import type { CivilDate } from "../shared/ids.ts";
import { DURATION } from "../shared/patterns.ts";
import { civilDate, civilParts, daysInMonth, FIRST_CIVIL_DATE, LAST_CIVIL_DATE } from "./civil.ts";

export interface Duration {
  readonly months: number;
  readonly days: number;
}

const PATTERN = new RegExp(DURATION);
const number = (digits: string | undefined): number =>
  digits === undefined ? 0 : Number(digits.slice(0, -1));

/** Years and months come to months, weeks and days to days; undefined for what `DURATION` refuses. */
export function parseDuration(iso: string): Duration | undefined {
  const match = PATTERN.exec(iso);
  if (match === null) return undefined;
  return {
    months: number(match[1]) * 12 + number(match[2]),
    days: number(match[3]) * 7 + number(match[4]),
  };
}

/** An estate has few durations and adds them for every asset. */
const KEPT = 500;
const kept = new Map<string, Duration>();

/** As `parseDuration`. @throws RangeError when `iso` does not match `DURATION`. */
export function durationOf(iso: string): Duration {
  const known = kept.get(iso);
  if (known !== undefined) return known;
  const duration = parseDuration(iso);
  if (duration === undefined) throw new RangeError(`not a duration of whole days: ${iso}`);
  if (kept.size >= KEPT) kept.clear();
  kept.set(iso, duration);
  return duration;
}

/** The same day of the month so many months on, or the last of that month. */
function addMonths(date: CivilDate, count: number): number {
  const { year, month, day } = civilParts(date);
  const months = year * 12 + (month - 1) + count;
  const toYear = Math.floor(months / 12);
  const toMonth = months - toYear * 12 + 1;
  return civilDate(toYear, toMonth, day < 29 ? day : Math.min(day, daysInMonth(toYear, toMonth)));
}

/** A duration so many times over from one anchor, so that month ends do not drift; `times` may be negative. */
export function addTimes(date: CivilDate, duration: Duration, times: number): CivilDate {
  const moved = duration.months === 0 ? date : addMonths(date, times * duration.months);
  const shifted = moved + times * duration.days;
  // Never past the years that can be written: a far date stays a date, and stays due.
  return Math.min(Math.max(shifted, FIRST_CIVIL_DATE), LAST_CIVIL_DATE) as CivilDate;
}

/**
 * Adds an ISO 8601 duration: months first, clamped to the end of the month, then days. Add
 * multiples to the anchor, never to a sum: 31 January + P2M is 31 March, + P1M twice is 28 March.
 * @throws RangeError when `iso` does not match `DURATION`.
 */
export const addDuration = (date: CivilDate, iso: string): CivilDate =>
  addTimes(date, durationOf(iso), 1);

/** Takes a duration off a date by the rules of `addDuration`. */
export const subtractDuration = (date: CivilDate, iso: string): CivilDate =>
  addTimes(date, durationOf(iso), -1);
