import type { FromSchema } from "json-schema-to-ts";
import type { CivilDate } from "../shared/ids.ts";
import { CIVIL_DATE } from "../shared/patterns.ts";
import { civilParts, parseCivilDate, weekday } from "./civil.ts";

const reason = { type: "string", minLength: 1, maxLength: 200 } as const;
const date = { type: "string", pattern: CIVIL_DATE } as const;
const dayOfYear = { type: "string", pattern: "^(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$" } as const;

/** When a place is closed; every reason is one that people read. */
export const CALENDAR_SCHEMA = {
  type: "object",
  properties: {
    /** 1 for Monday to 7 for Sunday. */
    weekdays: {
      type: "array",
      maxItems: 7,
      items: {
        type: "object",
        properties: { weekday: { type: "integer", minimum: 1, maximum: 7 }, reason },
        required: ["weekday", "reason"],
        additionalProperties: false,
      },
    },
    holidays: {
      type: "array",
      maxItems: 2000,
      items: {
        type: "object",
        properties: { date, reason },
        required: ["date", "reason"],
        additionalProperties: false,
      },
    },
    /** Both days belong to it. */
    closures: {
      type: "array",
      maxItems: 500,
      items: {
        type: "object",
        properties: { from: date, to: date, reason },
        required: ["from", "to", "reason"],
        additionalProperties: false,
      },
    },
    /** Month and day, each year; both belong to it, and it may lead over the new year. */
    seasons: {
      type: "array",
      maxItems: 50,
      items: {
        type: "object",
        properties: { from: dayOfYear, to: dayOfYear, reason },
        required: ["from", "to", "reason"],
        additionalProperties: false,
      },
    },
  },
  additionalProperties: false,
} as const;

export type CalendarData = FromSchema<typeof CALENDAR_SCHEMA>;

export interface Calendar {
  /** Why it is closed on a day; null when it is open. */
  closed(day: CivilDate): string | null;
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
  return {
    closed: (day) =>
      closures.find(({ from, to }) => day >= from && day <= to)?.reason ??
      season(day) ??
      holidays.get(day) ??
      weekdays.get(weekday(day)) ??
      null,
  };
}

/** The last open day on or before one, no earlier than `floor`; undefined when there is none. */
export function lastOpen(
  calendar: Calendar,
  day: CivilDate,
  floor: CivilDate,
): CivilDate | undefined {
  for (let at = day; at >= floor; at = (at - 1) as CivilDate)
    if (calendar.closed(at) === null) return at;
  return undefined;
}

/** How far ahead an open day is looked for: longer than any closure that is one. */
const LONGEST_CLOSURE = 1100;

/** The first open day on or after one; undefined when it stays closed for three years. */
export function firstOpen(calendar: Calendar, day: CivilDate): CivilDate | undefined {
  for (let at = day; at <= day + LONGEST_CLOSURE; at = (at + 1) as CivilDate)
    if (calendar.closed(at) === null) return at;
  return undefined;
}
