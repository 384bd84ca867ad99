import type { CivilDate } from "../shared/ids.ts";
import type { CalendarData } from "./calendar-schema.ts";
import { civilParts, parseCivilDate, weekday } from "./civil.ts";

/** A weekday off or a holiday, or the place is closed. */
export interface ShutDay {
  readonly kind: "day-off" | "closure";
  readonly reason: string;
}

export interface Reopening {
  /** The first day after a closure that is open. */
  readonly on: CivilDate;
  readonly reason: string;
}

export interface Calendar {
  /** Why nothing is done on a day; null when it is open. A closure comes before a day off. */
  shut(day: CivilDate): ShutDay | null;
  /** The first reopening after a closure on or after a day; undefined when none is known. */
  nextReopening(from: CivilDate): Reopening | undefined;
}

/** @throws RangeError for a day that no month has. */
const dayOf = (iso: string): CivilDate => {
  const day = parseCivilDate(iso);
  if (day === undefined) throw new RangeError(`no such day: ${iso}`);
  return day;
};

const monthAndDay = (written: string): number => {
  const [month, day] = written.split("-");
  return Number(month) * 100 + Number(day);
};

/** Every season comes round within it. */
const YEAR_AND_A_BIT = 400;

/** @throws RangeError for a date that no month has. */
export function calendarOf(data: CalendarData): Calendar {
  const weekdays = new Map((data.weekdays ?? []).map((one) => [one.weekday, one.reason]));
  const holidays = new Map((data.holidays ?? []).map((one) => [dayOf(one.date), one.reason]));
  const closures = (data.closures ?? []).map((one) => ({
    from: dayOf(one.from),
    to: dayOf(one.to),
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
  const shut = (day: CivilDate): ShutDay | null => {
    const closure = closed(day);
    if (closure !== undefined) return { kind: "closure", reason: closure };
    const off = holidays.get(day) ?? weekdays.get(weekday(day));
    return off === undefined ? null : { kind: "day-off", reason: off };
  };
  const nextReopening = (from: CivilDate): Reopening | undefined => {
    const last = closures.reduce((latest, { to }) => Math.max(latest, to), from + YEAR_AND_A_BIT);
    for (let day = from; day <= last + 1; day = (day + 1) as CivilDate) {
      const reason = closed((day - 1) as CivilDate);
      if (reason !== undefined && closed(day) === undefined) return { on: day, reason };
    }
    return undefined;
  };
  return { shut, nextReopening };
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

/** How far ahead an open day is looked for: longer than any closure that is one. */
const LONGEST_CLOSURE = 1100;

/** The first open day on or after one; undefined when it stays closed for three years. */
export function firstOpen(calendar: Calendar, day: CivilDate): CivilDate | undefined {
  for (let at = day; at <= day + LONGEST_CLOSURE; at = (at + 1) as CivilDate)
    if (calendar.shut(at) === null) return at;
  return undefined;
}
