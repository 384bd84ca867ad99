import type { CivilDate } from "../../shared/ids.ts";
import { civilDate, civilParts } from "../civil.ts";
import type { Rrule } from "./rrule.ts";

/** After so many units the Gregorian calendar repeats itself, weekdays and all: 400 years. */
const CYCLE = { DAILY: 146_097, WEEKLY: 20_871, MONTHLY: 4800, YEARLY: 400 } as const;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** How many periods of a rule in a row can be without a day before all are. */
export const periodsOfCycle = ({ freq, interval }: Rrule): number =>
  CYCLE[freq] / gcd(CYCLE[freq], interval);

/** 1969-12-29, a Monday. */
const MONDAY = -3;

/** The number of the day, week, month or year that a day lies in; weeks begin on WKST. */
export function unitOf({ freq, wkst }: Rrule, day: number): number {
  if (freq === "DAILY") return day;
  if (freq === "WEEKLY") return Math.floor((day - MONDAY - (wkst - 1)) / 7);
  const { year, month } = civilParts(day as CivilDate);
  return freq === "MONTHLY" ? year * 12 + month - 1 : year;
}

/** The first day of a unit. */
export function firstDayOf({ freq, wkst }: Rrule, unit: number): CivilDate {
  switch (freq) {
    case "DAILY":
      return unit as CivilDate;
    case "WEEKLY":
      return (unit * 7 + MONDAY + wkst - 1) as CivilDate;
    case "MONTHLY": {
      const year = Math.floor(unit / 12);
      return civilDate(year, unit - year * 12 + 1, 1);
    }
    case "YEARLY":
      return civilDate(unit, 1, 1);
  }
}
