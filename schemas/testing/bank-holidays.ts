import { calendarOf } from "../due/calendar.ts";

/**
 * Bank holidays of England and Wales, 2026 and 2027, as the government's list gives them: of a
 * holiday on a weekend day only the substitute day.
 */
export const BANK_HOLIDAYS: readonly string[] = [
  "2026-01-01",
  "2026-04-03",
  "2026-04-06",
  "2026-05-04",
  "2026-05-25",
  "2026-08-31",
  "2026-12-25",
  "2026-12-28",
  "2027-01-01",
  "2027-03-26",
  "2027-03-29",
  "2027-05-03",
  "2027-05-31",
  "2027-08-30",
  "2027-12-27",
  "2027-12-28",
];

export const WEEKEND = [
  { weekday: 6, reason: "Saturday" },
  { weekday: 7, reason: "Sunday" },
];

export const BUSINESS_DAYS = calendarOf({
  weekdays: WEEKEND,
  holidays: BANK_HOLIDAYS.map((date) => ({ date, reason: "bank holiday" })),
});
