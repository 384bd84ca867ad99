import {
  addDuration,
  computeWindow,
  formatCivilDate,
  type IntervalRule,
  subtractDuration,
} from "@roundbook/schemas";
import { Temporal } from "temporal-polyfill";
import { expect } from "vitest";
import { day, doneOn, REGISTERED } from "../../schemas/testing/due-records.ts";
import { civilAt, offsetMinutes } from "../../server/usecases/civil-now.ts";

interface Entry {
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
}

const DAILY: IntervalRule = { kind: "from-last-done", every: "P1D" };
/** The day on which a daily check is due that was done the day before: civil days have no length. */
const dueDay = (iso: string): string => {
  const before = subtractDuration(day(iso), "P1D");
  return formatCivilDate(
    computeWindow(DAILY, { done: [doneOn(before)], registered: REGISTERED }).due,
  );
};

/** The day that a site's clocks show at an instant, as the server has it; Temporal has to agree. */
function dayAt(zone: string, instant: string): string {
  const shown = civilAt(zone, Date.parse(instant));
  const other = Temporal.Instant.from(instant).toZonedDateTimeISO(zone);
  expect(shown).toBe(other.toPlainDate().toString());
  expect(offsetMinutes(zone, Date.parse(instant))).toBe(other.offsetNanoseconds / 60e9);
  return shown;
}

const INSTANT = /(\d\d):(\d\d)Z/;

/** How civil dates are held against what clocks do on them, by topic. */
export const ZONE_CHECKS: Readonly<Record<string, (entry: Entry) => void>> = {
  "summer time starts and ends": ({ input, expected }) => {
    for (const change of Object.values(expected as Readonly<Record<string, string>>)) {
      const zone = String(input.zone);
      const second = new Date(Date.parse(change) - 1000).toISOString();
      expect([second, change].map((instant) => dayAt(zone, instant))).toEqual([
        change.slice(0, 10),
        change.slice(0, 10),
      ]);
      const [before, after] = [second, change].map((at) => offsetMinutes(zone, Date.parse(at)));
      expect([before, after].sort()).toEqual([0, 60]);
      expect(dueDay(change.slice(0, 10))).toBe(change.slice(0, 10));
    }
  },
  "local time in gap or overlap": ({ input, expected }) => {
    const local = String(input.local);
    const [, hour, minute] = INSTANT.exec(String(expected)) ?? [];
    const date = local.slice(0, 10);
    expect(dayAt(String(input.zone), `${date}T${hour}:${minute}:00Z`)).toBe(date);
    expect(dueDay(date)).toBe(date);
  },
  "hours in the local day": ({ input, expected }) => {
    const date = String(input.date);
    const zone = String(input.zone);
    const midnight = Temporal.PlainDate.from(date).toZonedDateTime(zone);
    expect(midnight.hoursInDay).toBe(expected);
    const hours = [0, Number(expected) - 1, Number(expected)].map((after) =>
      dayAt(zone, midnight.add({ hours: after }).toInstant().toString()),
    );
    const next = formatCivilDate(addDuration(day(date), "P1D"));
    expect(hours).toEqual([date, date, next]);
    expect([dueDay(date), dueDay(next)]).toEqual([date, next]);
  },
  "daily 09:00 local stays 09:00 local": ({ input, expected }) => {
    const date = String(input.date);
    const zone = String(input.zone);
    expect(dueDay(date)).toBe(date);
    const nine = Temporal.PlainDate.from(dueDay(date)).toZonedDateTime({
      timeZone: zone,
      plainTime: "09:00",
    });
    expect(nine.toInstant().toString()).toBe(expected);
    expect(dayAt(zone, String(expected))).toBe(date);
  },
  "half-hour summer time": ({ input, expected }) => {
    const [change = ""] = /\d{4}-\d\d-\d\dT[\d:]+Z/.exec(String(expected)) ?? [];
    const at = Date.parse(change.replace("Z", ":00Z"));
    const zone = String(input.zone);
    const instants = [at - 1000, at].map((one) => new Date(one).toISOString());
    expect(instants.map((instant) => dayAt(zone, instant))).toEqual([input.date, input.date]);
    const [before = 0, after = 0] = [at - 1000, at].map((one) => offsetMinutes(zone, one));
    expect(before - after).toBe(30);
    expect(dueDay(String(input.date))).toBe(input.date);
  },
};
