import type { CivilDate } from "../shared/ids.ts";
import type { CalendarData } from "./calendar-schema.ts";
import { civilParts, FIRST_CIVIL_DATE, LAST_CIVIL_DATE, weekday } from "./civil.ts";
import { requireDate } from "./require-date.ts";

/** A weekday off or a holiday, or the place is closed. */
export interface ShutDay {
  readonly kind: "day-off" | "closure";
  readonly reason: string;
}

export interface Reopening {
  /** The first day after a closure, though it may be a day off. */
  readonly on: CivilDate;
  /** The first day of that closure. */
  readonly since: CivilDate;
  readonly reason: string;
}

export interface Calendar {
  /** Why nothing is done on a day; null when it is open. A closure comes before a day off. */
  shut(day: CivilDate): ShutDay | null;
  /** The first reopening after a closure on or after a day; undefined when none is known. */
  nextReopening(from: CivilDate): Reopening | undefined;
}

const monthAndDay = (written: string): number => {
  const [month, day] = written.split("-");
  return Number(month) * 100 + Number(day);
};

/** How far an open day is looked for: longer than any closure that is one. */
export const LONGEST_CLOSURE = 1100;

/** Every season comes round within it. */
const YEAR_AND_A_BIT = 400;

/** Estates ask of the same days over and over; more than this are forgotten and worked out anew. */
const MOST_KEPT = 40_000;

/** Remembers what a calendar says of a day. */
function kept<Said>(say: (day: CivilDate) => Said): (day: CivilDate) => Said {
  const known = new Map<CivilDate, Said>();
  return (day) => {
    const found = known.get(day);
    if (found !== undefined) return found;
    const said = say(day);
    if (known.size >= MOST_KEPT) known.clear();
    known.set(day, said);
    return said;
  };
}

/** @throws RangeError for a date that no month has. */
export function calendarOf(data: CalendarData): Calendar {
  const weekdays = new Map((data.weekdays ?? []).map((one) => [one.weekday, one.reason]));
  const holidays = new Map((data.holidays ?? []).map((one) => [requireDate(one.date), one.reason]));
  const closures = (data.closures ?? []).map((one) => ({
    from: requireDate(one.from),
    to: requireDate(one.to),
    reason: one.reason,
  }));
  const seasons = (data.seasons ?? []).map((one) => ({
    from: monthAndDay(one.from),
    to: monthAndDay(one.to),
    reason: one.reason,
  }));
  const season = (date: CivilDate): string | undefined => {
    if (seasons.length === 0) return undefined;
    const { month, day } = civilParts(date);
    const at = month * 100 + day;
    return seasons.find(({ from, to }) =>
      from <= to ? at >= from && at <= to : at >= from || at <= to,
    )?.reason;
  };
  const closed = (day: CivilDate): string | undefined =>
    closures.find(({ from, to }) => day >= from && day <= to)?.reason ?? season(day);
  const shut = kept((day: CivilDate): ShutDay | null => {
    const closure = closed(day);
    if (closure !== undefined) return { kind: "closure", reason: closure };
    const off = holidays.get(day) ?? weekdays.get(weekday(day));
    return off === undefined ? null : { kind: "day-off", reason: off };
  });
  const isClosed = (day: number) => shut(day as CivilDate)?.kind === "closure";
  const lastClosure = Math.max(FIRST_CIVIL_DATE, ...closures.map(({ to }) => to));
  const reopening = kept((from: CivilDate): Reopening | null => {
    const far = Math.max(lastClosure, seasons.length > 0 ? from + YEAR_AND_A_BIT : from);
    // What is closed to the end of the calendar does not reopen.
    const last = Math.min(far, LAST_CIVIL_DATE - 1);
    for (let on = from; on <= last + 1; on = (on + 1) as CivilDate) {
      if (isClosed(on) || !isClosed(on - 1)) continue;
      let since = on - 1;
      while (since > on - LONGEST_CLOSURE && isClosed(since - 1)) since -= 1;
      const reason = closed((on - 1) as CivilDate) ?? "";
      return { on, since: since as CivilDate, reason };
    }
    return null;
  });
  return { shut, nextReopening: (from) => reopening(from) ?? undefined };
}

/** The last open day on or before one, no earlier than `floor`; undefined when there is none. */
export function lastOpen(
  calendar: Calendar,
  day: CivilDate,
  floor: CivilDate,
): CivilDate | undefined {
  for (let at = day; at >= floor; at = (at - 1) as CivilDate)
    if (calendar.shut(at) === null) return at;
  return undefined;
}

/** The first open day on or after one; undefined when it stays closed for three years. */
export function firstOpen(calendar: Calendar, day: CivilDate): CivilDate | undefined {
  for (let at = day; at <= day + LONGEST_CLOSURE; at = (at + 1) as CivilDate)
    if (calendar.shut(at) === null) return at;
  return undefined;
}
