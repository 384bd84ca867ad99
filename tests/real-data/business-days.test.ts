import {
  type CivilDate,
  calendarOf,
  computeWindow,
  formatCivilDate,
  type IntervalRule,
} from "@roundbook/schemas";
import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { beforeAll, describe, expect, test } from "vitest";
import { WEEKEND } from "../../schemas/testing/bank-holidays.ts";
import { day, doneOn, REGISTERED } from "../../schemas/testing/due-records.ts";
import { holidaysOf } from "../../server/usecases/holidays.ts";

const { PlainDate } = Temporal;
const YEARS = [2025, 2026, 2027];
const DAYS = Array.from({ length: 1095 }, (_, at) =>
  formatCivilDate((day("2025-01-01") + at) as CivilDate),
);

describe("business days of England and Wales, 2025 to 2027", () => {
  let holidays: readonly string[] = [];
  let calendar = calendarOf({});
  beforeAll(async () => {
    const found = (await Promise.all(YEARS.map((year) => holidaysOf("GB-ENG", year)))).flat();
    holidays = found.map(({ date }) => date);
    calendar = calendarOf({ weekdays: WEEKEND, holidays: found });
  });

  const isOpen = (date: Temporal.PlainDate) =>
    date.dayOfWeek < 6 && !holidays.includes(date.toString());
  const moved = (iso: string, by: 1 | -1) => {
    let date = PlainDate.from(iso);
    while (!isOpen(date)) date = date.add({ days: by });
    return date;
  };
  const due = (iso: string, rule: Partial<IntervalRule>) => {
    const before = PlainDate.from(iso).subtract({ days: 20 }).toString();
    const given = { kind: "from-last-done", every: "P20D", ...rule } as IntervalRule;
    const facts = { done: [doneOn(before)], registered: REGISTERED, calendar };
    return formatCivilDate(computeWindow(given, facts).due);
  };

  test("there are 24 bank holidays, all of them weekdays", () => {
    expect(holidays).toHaveLength(24);
    expect(holidays.filter((date) => PlainDate.from(date).dayOfWeek > 5)).toEqual([]);
  });

  // Day by day as counted with Temporal on the holidays alone.
  test("every date of the three years rolls back and forward as counted day by day", () => {
    // After the last days of 2027 lie holidays of a year that is not asked for.
    for (const date of DAYS.slice(0, -5)) {
      expect(due(date, { onDayOff: "roll-back" })).toBe(moved(date, -1).toString());
      expect(due(date, { onDayOff: "roll-forward" })).toBe(moved(date, 1).toString());
      expect(due(date, { onDayOff: "due-anyway" })).toBe(date);
    }
  });

  // gov.uk/bank-holidays; the open days about them are worked by hand.
  test.each([
    ["2025-04-18", "2025-04-17", "2025-04-22"],
    ["2025-12-26", "2025-12-24", "2025-12-29"],
    ["2026-04-06", "2026-04-02", "2026-04-07"],
    ["2026-12-28", "2026-12-24", "2026-12-29"],
    ["2027-12-27", "2027-12-24", "2027-12-29"],
  ])("%s: back to %s, on to %s", (date, back, on) => {
    expect([due(date, {}), due(date, { onDayOff: "roll-forward" })]).toEqual([back, on]);
  });

  test("put off within the month is “modified following” (ISDA 2006 Definitions, section 4.12)", () => {
    for (const date of DAYS.slice(0, -5)) {
      const { day: at } = PlainDate.from(date);
      const before = PlainDate.from(date).subtract({ days: at }).toString();
      const rule: IntervalRule = {
        kind: "each-period",
        period: "month",
        day: at,
        onDayOff: "roll-forward",
      };
      const facts = { done: [doneOn(before)], registered: REGISTERED, calendar };
      const on = moved(date, 1);
      const expected = on.month === PlainDate.from(date).month ? on : moved(date, -1);
      expect(formatCivilDate(computeWindow(rule, facts).due)).toBe(expected.toString());
    }
  });
});

// Clocks in London change on the last Sundays of March and October.
test("a due date is the same civil day at nine in London whatever the clocks do in between", () => {
  const units = ["days", "weeks", "months", "years"] as const;
  const letters = { days: "D", weeks: "W", months: "M", years: "Y" } as const;
  fc.assert(
    fc.property(
      fc.integer({ min: day("2024-01-01"), max: day("2029-12-31") }),
      fc.constantFrom(...units),
      fc.integer({ min: 1, max: 40 }),
      (from, unit, count) => {
        const done = formatCivilDate(from as CivilDate);
        const rule: IntervalRule = { kind: "from-last-done", every: `P${count}${letters[unit]}` };
        const { due } = computeWindow(rule, { done: [doneOn(done)], registered: REGISTERED });
        const nine = PlainDate.from(done).toZonedDateTime({
          timeZone: "Europe/London",
          plainTime: "09:00",
        });
        const then = nine.add({ [unit]: count });
        expect(formatCivilDate(due)).toBe(then.toPlainDate().toString());
        expect(then.hour).toBe(9);
      },
    ),
    { seed: 29_03_2026, numRuns: 2000 },
  );
});
