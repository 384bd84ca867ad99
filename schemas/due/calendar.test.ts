import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CivilDate } from "../shared/ids.ts";
import { BUSINESS_DAYS } from "../testing/bank-holidays.ts";
import { day } from "../testing/due-records.ts";
import { calendarOf, firstOpen, lastOpen } from "./calendar.ts";
import { FIRST_CIVIL_DATE, formatCivilDate } from "./civil.ts";

fc.configureGlobal({ seed: 2031 });

const written = (found: CivilDate | undefined) =>
  found === undefined ? undefined : formatCivilDate(found);

// Business-day conventions "preceding" and "following", worked on the published bank holidays.
test.each([
  ["2026-12-25", "2026-12-24", "2026-12-29"],
  ["2026-12-26", "2026-12-24", "2026-12-29"],
  ["2027-05-31", "2027-05-28", "2027-06-01"],
  ["2026-01-31", "2026-01-30", "2026-02-02"],
  ["2026-11-01", "2026-10-30", "2026-11-02"],
  ["2027-12-25", "2027-12-24", "2027-12-29"],
  ["2027-03-28", "2027-03-25", "2027-03-30"],
  ["2026-02-28", "2026-02-27", "2026-03-02"],
  ["2026-05-01", "2026-05-01", "2026-05-01"],
])("%s: open last on %s and next on %s", (date, before, after) => {
  expect(written(lastOpen(BUSINESS_DAYS, day(date), FIRST_CIVIL_DATE))).toBe(before);
  expect(written(firstOpen(BUSINESS_DAYS, day(date)))).toBe(after);
});

describe("a calendar", () => {
  const school = calendarOf({
    closures: [{ from: "2026-07-23", to: "2026-09-01", reason: "summer holidays" }],
    seasons: [{ from: "11-01", to: "02-28", reason: "laid up for the winter" }],
    holidays: [{ date: "2026-05-04", reason: "bank holiday" }],
  });

  test.each([
    ["2026-07-22", null],
    ["2026-07-23", "summer holidays"],
    ["2026-09-01", "summer holidays"],
    ["2026-09-02", null],
    ["2026-05-04", "bank holiday"],
    ["2026-05-03", null],
    ["2026-12-31", "laid up for the winter"],
    ["2027-01-01", "laid up for the winter"],
    ["2031-02-28", "laid up for the winter"],
    ["2028-02-29", null],
    ["2026-10-31", null],
  ])("%s: %j", (date, reason) => {
    expect(school.shut(day(date))?.reason ?? null).toBe(reason);
  });

  test("that never opens has no open day", () => {
    const shut = calendarOf({ seasons: [{ from: "01-01", to: "12-31", reason: "shut" }] });
    expect(firstOpen(shut, day("2026-01-01"))).toBeUndefined();
    expect(lastOpen(shut, day("2026-01-01"), day("2020-01-01"))).toBeUndefined();
  });

  test("with a day that no month has is refused", () => {
    expect(() => calendarOf({ holidays: [{ date: "2026-02-30", reason: "none" }] })).toThrow(
      RangeError,
    );
  });

  test("an open day is its own last and next open day", () => {
    fc.assert(
      fc.property(fc.integer({ min: day("2025-01-01"), max: day("2029-01-01") }), (at) => {
        const date = at as CivilDate;
        const isOpen = BUSINESS_DAYS.shut(date) === null;
        expect(firstOpen(BUSINESS_DAYS, date) === date).toBe(isOpen);
        expect(lastOpen(BUSINESS_DAYS, date, FIRST_CIVIL_DATE) === date).toBe(isOpen);
      }),
    );
  });
});

test("what is closed to the end of the calendar does not reopen", () => {
  const closed = calendarOf({
    closures: [{ from: "2026-10-01", to: "9999-12-31", reason: "Given up" }],
  });
  expect(closed.nextReopening(day("2026-10-13"))).toBeUndefined();
  const open = calendarOf({
    closures: [{ from: "2026-10-01", to: "9999-12-30", reason: "Long" }],
  });
  expect(written(open.nextReopening(day("2026-10-13"))?.on)).toBe("9999-12-31");
});
