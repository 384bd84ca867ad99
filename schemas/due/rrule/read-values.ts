import type { CivilDate } from "../../shared/ids.ts";
import { parseCivilDate } from "../civil.ts";
import { badValue, type Part, pieces, type Report } from "./read-parts.ts";
import { WEEKDAYS, type WeekdayRule } from "./rrule.ts";

const UNTIL = /^(\d{4})(\d{2})(\d{2})(?:T((?:[01]\d|2[0-3])[0-5]\d(?:[0-5]\d|60))Z?)?$/;

/**
 * The last day that UNTIL lets through. Of a date-time the date counts as it is written, in UTC. An
 * UNTIL at midnight lets nothing of its own day through: whatever is done on a day is done after
 * it began, and so RFC 5545 §3.8.5.3 ends "daily until December 24, 1997" (19971224T000000Z) on
 * December 23.
 */
export function readUntil(part: Part | undefined, report: Report): CivilDate | null {
  if (part === undefined) return null;
  const match = UNTIL.exec(part.value);
  const date = match && parseCivilDate(`${match[1]}-${match[2]}-${match[3]}`);
  if (!match || date === undefined || date === null) {
    badValue(part, report);
    return null;
  }
  return (match[4] === "000000" ? date - 1 : date) as CivilDate;
}

const WEEKDAY = /^([+-]?\d{1,2})?([A-Z]{2})$/;
const NAMES: readonly string[] = WEEKDAYS;
/** Weeks that a year can have some days of. */
const MOST_NTH = 53;

/** The different weekdays of BYDAY, with their ordinals. */
export function readWeekdays(part: Part | undefined, report: Report): WeekdayRule[] {
  if (part === undefined) return [];
  const found = new Map<string, WeekdayRule>();
  for (const piece of pieces(part)) {
    const match = WEEKDAY.exec(piece.value);
    const weekday = NAMES.indexOf(match?.[2] ?? "") + 1;
    const nth = Number(match?.[1] ?? 0);
    const { name, value, start, end } = piece;
    if (weekday === 0) badValue(piece, report);
    else if (match?.[1] !== undefined && (nth === 0 || Math.abs(nth) > MOST_NTH)) {
      const [least, most] = [-MOST_NTH, MOST_NTH];
      report("rrule-out-of-range", { part: name, value, least, most, start, end });
    } else found.set(`${nth} ${weekday}`, { weekday, nth });
  }
  return [...found.values()];
}
