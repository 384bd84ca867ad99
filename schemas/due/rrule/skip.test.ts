import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dates, day, firstOf, rule } from "../../testing/recurrence.ts";
import { civilParts, daysInMonth } from "../civil.ts";
import { addDuration } from "../duration.ts";
import { lastOnOrBefore, nextAfter } from "./occurrences.ts";

fc.configureGlobal({ seed: 2030 });

const skipping = (skip: string, rest: string) => `RSCALE=GREGORIAN;SKIP=${skip};${rest}`;

// RFC 7529 §4.1 says where an invalid day goes; dates worked by hand from the calendar, but for the
// first two: expected dates of a published test file, read second-hand.
const SKIPPED = [
  ["FORWARD", "FREQ=MONTHLY", "2014-01-31", "2014-01-31 2014-03-01 2014-03-31 2014-05-01"],
  ["OMIT", "FREQ=YEARLY", "2012-02-29", "2012-02-29 2016-02-29 2020-02-29 2024-02-29"],
  ["OMIT", "FREQ=MONTHLY", "2014-01-31", "2014-01-31 2014-03-31 2014-05-31 2014-07-31"],
  ["BACKWARD", "FREQ=MONTHLY", "2014-01-31", "2014-01-31 2014-02-28 2014-03-31 2014-04-30"],
  ["BACKWARD", "FREQ=YEARLY", "2016-02-29", "2016-02-29 2017-02-28 2018-02-28 2019-02-28"],
  ["FORWARD", "FREQ=YEARLY", "2016-02-29", "2016-02-29 2017-03-01 2018-03-01 2019-03-01"],
  ["BACKWARD", "FREQ=YEARLY;BYYEARDAY=366", "2015-06-01", "2015-12-31 2016-12-31 2017-12-31"],
  ["FORWARD", "FREQ=YEARLY;BYYEARDAY=366", "2015-06-01", "2016-01-01 2016-12-31 2018-01-01"],
  ["FORWARD", "FREQ=MONTHLY;BYMONTHDAY=1,31", "2026-03-31", "2026-03-31 2026-04-01 2026-05-01"],
  ["BACKWARD", "FREQ=MONTHLY;BYMONTHDAY=-31", "2026-03-01", "2026-03-01 2026-03-31 2026-05-01"],
  ["FORWARD", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "2026-01-01", "2026-03-01 2027-03-01"],
  ["BACKWARD", "FREQ=MONTHLY;BYMONTHDAY=31;BYDAY=-1SA", "2026-01-01", "2026-01-31 2026-02-28"],
] as const;

test.each(SKIPPED)("SKIP=%s;%s from %s", (skip, text, start, expected) => {
  expect(dates(skipping(skip, text), start, expected.split(" ").length)).toBe(expected);
});

test("a day that two months give is given once, whichever month is asked first", () => {
  const twice = rule(skipping("FORWARD", "FREQ=MONTHLY;BYMONTHDAY=1,31"));
  const start = day("2026-03-31");
  expect(nextAfter(twice, start, day("2026-04-30"))).toEqual({ date: day("2026-05-01") });
  expect(nextAfter(twice, start, day("2026-05-01"))).toEqual({ date: day("2026-05-31") });
  expect(lastOnOrBefore(twice, start, day("2026-05-30"))).toBe(day("2026-05-01"));
});

test("a skip goes before BYSETPOS counts, and a count counts what is left", () => {
  const last = "FREQ=MONTHLY;BYMONTHDAY=29,30,31;BYSETPOS=-1;COUNT=3";
  expect(dates(skipping("BACKWARD", last), "2026-01-01", 9)).toBe(
    "2026-01-31 2026-02-28 2026-03-31",
  );
});

describe("no drift over 100 cycles, from any anchor", () => {
  const anchors = fc.integer({ min: -20_000, max: 40_000 });

  test.each([
    ["MONTHLY", 1, "M"],
    ["MONTHLY", 6, "M"],
    ["YEARLY", 1, "Y"],
  ] as const)(
    "FREQ=%s;INTERVAL=%i;SKIP=BACKWARD is the anchor plus a duration",
    (freq, n, unit) => {
      const recurrence = rule(skipping("BACKWARD", `FREQ=${freq};INTERVAL=${n}`));
      fc.assert(
        fc.property(anchors, (anchor) => {
          const start = anchor as ReturnType<typeof day>;
          const durations = Array.from({ length: 101 }, (_, i) =>
            addDuration(start, `P${i * n}${unit}`),
          );
          expect(firstOf(recurrence, start, 101)).toEqual(durations);
        }),
      );
    },
  );

  test("the day of the anchor comes back in every month that has it", () => {
    const recurrence = rule("FREQ=MONTHLY");
    fc.assert(
      fc.property(anchors, (anchor) => {
        const start = anchor as ReturnType<typeof day>;
        const wanted = civilParts(start).day;
        for (const date of firstOf(recurrence, start, 100)) {
          const { year, month, day: own } = civilParts(date);
          expect(own).toBe(wanted);
          expect(daysInMonth(year, month)).toBeGreaterThanOrEqual(wanted);
        }
      }),
    );
  });
});
