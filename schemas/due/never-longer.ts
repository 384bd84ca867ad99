import type { CivilDate } from "../shared/ids.ts";
import { civilDate } from "./civil.ts";
import { addTimes, durationOf } from "./duration.ts";

/** Four years with every length of month, beginning after a 29 February. */
const FROM = civilDate(2024, 3, 1);
const DAYS = 1461;

/**
 * Whether one duration ends no later than another, whichever day they begin on: P30D and P1M are
 * each longer than the other on some day.
 */
export function neverLonger(one: string, other: string): boolean {
  const [a, b] = [durationOf(one), durationOf(other)];
  if (a.months <= b.months && a.days <= b.days) return true;
  if (a.months >= b.months && a.days >= b.days) return false;
  for (let day = FROM; day < FROM + DAYS; day = (day + 1) as CivilDate)
    if (addTimes(day, a, 1) > addTimes(day, b, 1)) return false;
  return true;
}
