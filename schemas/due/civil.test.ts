import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, test } from "vitest";
import type { CivilDate, Instant } from "../shared/ids.ts";
import {
  civilDateAt,
  civilParts,
  FIRST_CIVIL_DATE,
  formatCivilDate,
  LAST_CIVIL_DATE,
  parseCivilDate,
  weekday,
} from "./civil.ts";
import { addDuration, parseDuration, subtractDuration } from "./duration.ts";

const day = (iso: string): CivilDate => {
  const parsed = parseCivilDate(iso);
  if (parsed === undefined) throw new Error(`${iso} is no date`);
  return parsed;
};
const plus = (iso: string, duration: string) => formatCivilDate(addDuration(day(iso), duration));

describe("civil dates", () => {
  test("day 0 is 1970-01-01, a Thursday", () => {
    expect(day("1970-01-01")).toBe(0);
    expect(weekday(0 as CivilDate)).toBe(4);
  });

  test.each([
    "2024-02-30",
    "2024-02-31",
    "2023-02-29",
    "1900-02-29",
    "2024-04-31",
    "2024-13-01",
    "2024-00-10",
    "2024-01-00",
    "2024-1-1",
    "31/02/2024",
    " 2024-01-01",
    "2024-01-01T00:00",
    "",
  ])("%j is no date", (iso) => {
    expect(parseCivilDate(iso)).toBeUndefined();
  });

  test("every day of 400 years and the ends of the calendar read back as written", () => {
    const start = day("1800-01-01");
    let wrong = 0;
    for (let date = start; date < start + 146_097; date++) {
      if (parseCivilDate(formatCivilDate(date as CivilDate)) !== date) wrong += 1;
    }
    expect(wrong).toBe(0);
    expect(formatCivilDate(FIRST_CIVIL_DATE)).toBe("0000-01-01");
    expect(formatCivilDate(LAST_CIVIL_DATE)).toBe("9999-12-31");
    expect(() => formatCivilDate((LAST_CIVIL_DATE + 1) as CivilDate)).toThrow(RangeError);
  });

  test("an instant falls on the day the site's clock shows", () => {
    const justBeforeMidnight = (86_400_000 - 1) as Instant;
    expect(civilDateAt(justBeforeMidnight, 0)).toBe(0);
    expect(civilDateAt(justBeforeMidnight, 1)).toBe(1);
    expect(civilDateAt(0 as Instant, -1)).toBe(-1);
  });
});

describe("durations", () => {
  // Worked by hand from the calendar.
  test.each([
    ["2026-01-31", "P1M", "2026-02-28"],
    ["2026-01-31", "P2M", "2026-03-31"],
    ["2026-01-31", "P3M", "2026-04-30"],
    ["2026-01-31", "P25M", "2028-02-29"],
    ["2024-02-29", "P1Y", "2025-02-28"],
    ["2024-02-29", "P12M", "2025-02-28"],
    ["2024-02-29", "P4Y", "2028-02-29"],
    ["2024-02-28", "P1W", "2024-03-06"],
    ["2024-01-31", "P1M1D", "2024-03-01"],
    ["2024-12-31", "P1D", "2025-01-01"],
  ])("%s and %s: %s", (from, duration, to) => {
    expect(plus(from, duration)).toBe(to);
  });

  test("a hundred monthly steps from one anchor do not drift", () => {
    const anchor = day("2026-01-31");
    const days = Array.from(
      { length: 100 },
      (_, n) => civilParts(addDuration(anchor, `P${n}M`)).day,
    );
    expect(days.filter((d) => d < 28)).toEqual([]);
    expect(days.filter((d) => d === 31)).toHaveLength(58);
  });

  test("a date past the year 9999 stays the last one, so it stays due", () => {
    expect(plus("9999-06-01", "P1Y")).toBe("9999-12-31");
    expect(formatCivilDate(subtractDuration(day("0000-02-01"), "P1Y"))).toBe("0000-01-01");
  });

  test.each(["", "P", "1D", "P1H", "PT1H", "P-1D", "P1D1M", "P1.5D", "p1d", "P1000Y"])(
    "%j is no duration",
    (iso) => {
      expect(parseDuration(iso)).toBeUndefined();
      expect(() => addDuration(day("2024-01-01"), iso)).toThrow(RangeError);
    },
  );

  test("adding and taking off agree with Temporal on 100,000 random pairs", () => {
    const pair = fc.record({
      from: fc.integer({ min: day("1600-01-01"), max: day("2900-12-31") }),
      years: fc.integer({ min: 0, max: 60 }),
      months: fc.integer({ min: 0, max: 700 }),
      weeks: fc.integer({ min: 0, max: 300 }),
      days: fc.integer({ min: 0, max: 20_000 }),
    });
    const differing = fc.sample(pair, { numRuns: 100_000, seed: 8536 }).filter((sample) => {
      const { from, ...duration } = sample;
      const iso = formatCivilDate(from as CivilDate);
      const written = `P${duration.years}Y${duration.months}M${duration.weeks}W${duration.days}D`;
      const theirs = Temporal.PlainDate.from(iso);
      return (
        plus(iso, written) !== theirs.add(duration).toString() ||
        formatCivilDate(subtractDuration(from as CivilDate, written)) !==
          theirs.subtract(duration).toString() ||
        weekday(from as CivilDate) !== theirs.dayOfWeek
      );
    });
    expect(differing).toEqual([]);
  });
});
