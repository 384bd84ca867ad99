import type { CivilDate, Instant } from "../shared/ids.ts";

export interface CivilParts {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  /** 1 to 31. */
  readonly day: number;
}

const DAYS_PER_ERA = 146_097;
/** Days from 0000-03-01, where an era of 400 years begins, to 1970-01-01. */
const EPOCH_FROM_ERA = 719_468;
const MONTH_LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

export const daysInMonth = (year: number, month: number): number =>
  month === 2 && year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
    ? 29
    : (MONTH_LENGTHS[month - 1] ?? 0);

/**
 * The day of a valid date of the proleptic Gregorian calendar. Years are counted from March, so
 * that the leap day is the last of its year (H. Hinnant, "chrono-Compatible Low-Level Date
 * Algorithms").
 */
export function civilDate(year: number, month: number, day: number): CivilDate {
  const marchYear = month > 2 ? year : year - 1;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const monthFromMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * monthFromMarch + 2) / 5) + day - 1;
  const leaps = Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100);
  const dayOfEra = yearOfEra * 365 + leaps + dayOfYear;
  return (era * DAYS_PER_ERA + dayOfEra - EPOCH_FROM_ERA) as CivilDate;
}

export function civilParts(date: CivilDate): CivilParts {
  const shifted = date + EPOCH_FROM_ERA;
  const era = Math.floor(shifted / DAYS_PER_ERA);
  const dayOfEra = shifted - era * DAYS_PER_ERA;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1;
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

/** 0000-01-01 and 9999-12-31: the dates that ISO 8601 writes with four digits. */
export const FIRST_CIVIL_DATE = civilDate(0, 1, 1);
export const LAST_CIVIL_DATE = civilDate(9999, 12, 31);

const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Reads YYYY-MM-DD; undefined for anything else and for days that no month has. */
export function parseCivilDate(iso: string): CivilDate | undefined {
  const match = ISO.exec(iso);
  if (match === null) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return undefined;
  return civilDate(year, month, day);
}

/** YYYY-MM-DD. @throws RangeError outside the years 0000 to 9999. */
export function formatCivilDate(date: CivilDate): string {
  if (!(date >= FIRST_CIVIL_DATE && date <= LAST_CIVIL_DATE))
    throw new RangeError(`no four-digit year on day ${date}`);
  const { year, month, day } = civilParts(date);
  const written = year > 999 ? year : String(year).padStart(4, "0");
  return `${written}-${month < 10 ? "0" : ""}${month}-${day < 10 ? "0" : ""}${day}`;
}

/** 1 for Monday to 7 for Sunday, as ISO 8601 numbers them. */
export const weekday = (date: CivilDate): number => ((((date + 3) % 7) + 7) % 7) + 1;

/** The civil date shown by a clock set `offsetMinutes` east of UTC. */
export const civilDateAt = (instant: Instant | number, offsetMinutes: number): CivilDate =>
  Math.floor((instant + offsetMinutes * 60_000) / 86_400_000) as CivilDate;
