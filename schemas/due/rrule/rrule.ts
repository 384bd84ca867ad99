import type { CivilDate } from "../../shared/ids.ts";

export const FREQUENCIES = ["DAILY", "WEEKLY", "MONTHLY", "YEARLY"] as const;
export type Frequency = (typeof FREQUENCIES)[number];

/** In the order of ISO 8601: MO is 1. */
export const WEEKDAYS = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"] as const;

/** What becomes of a day that its month or year does not have (RFC 7529 §4.1). */
export const SKIPS = ["OMIT", "BACKWARD", "FORWARD"] as const;
export type Skip = (typeof SKIPS)[number];

export interface WeekdayRule {
  /** 1 for Monday to 7 for Sunday. */
  readonly weekday: number;
  /** 2 for the second of its month or year, -1 for the last, 0 for every one. */
  readonly nth: number;
}

/** A recurrence rule of RFC 5545 §3.3.10 with the skips of RFC 7529; an absent list is empty. */
export interface Rrule {
  readonly freq: Frequency;
  readonly interval: number;
  readonly count: number | null;
  /** The last day that can be an occurrence. */
  readonly until: CivilDate | null;
  /** 1 for Monday to 7 for Sunday. */
  readonly wkst: number;
  readonly byMonth: readonly number[];
  readonly byWeekNo: readonly number[];
  readonly byYearDay: readonly number[];
  readonly byMonthDay: readonly number[];
  readonly byDay: readonly WeekdayRule[];
  readonly bySetPos: readonly number[];
  readonly skip: Skip;
}

/**
 * Why a rule gives no further date: its COUNT is used up, its UNTIL is behind, no day of the
 * calendar's whole cycle of 400 years fits it, or the year 9999 is over.
 */
export type RruleEnd = "count-reached" | "until-passed" | "never-again" | "calendar-ends";
