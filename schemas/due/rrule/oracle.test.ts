import fc from "fast-check";
import { rrulestr } from "rrule";
import { describe, expect, test } from "vitest";
import { anyRule } from "../../testing/any-rrule.ts";
import { day, firstOf, rule } from "../../testing/recurrence.ts";
import { formatCivilDate } from "../civil.ts";

const byLibrary = (text: string, start: string, count: number): string[] =>
  rrulestr(`DTSTART:${start.replaceAll("-", "")}T000000Z\nRRULE:${text}`)
    .all((_date, index) => index < count)
    .map((date) => date.toISOString().slice(0, 10));

const byUs = (text: string, start: string, count: number): string[] =>
  firstOf(rule(text), day(start), count).map(formatCivilDate);

test("the rrule library gives the same days, for 6,000 rules", () => {
  let compared = 0;
  let without = 0;
  fc.assert(
    fc.property(anyRule, ({ text, start }) => {
      const ours = firstOf(rule(text), start, 30).map(formatCivilDate);
      // It seeks up to the year 9999: of a rule without days it is not asked.
      if (ours.length === 0) without += 1;
      else {
        compared += 1;
        expect(byLibrary(text, formatCivilDate(start), ours.length)).toEqual(ours);
      }
    }),
    // Seeded: how many of the rules give days at all is then the same in every run.
    { numRuns: 6000, seed: 20261125 },
  );
  expect(compared + without).toBe(6000);
  expect(compared).toBeGreaterThan(4900);
  expect(without).toBeGreaterThan(0);
});

// What the random rules keep clear of: why we are right, the rule, DTSTART, our dates, the library's.
const DEFECTS: readonly (readonly [string, string, string, string, string])[] = [
  [
    'BYSETPOS counts in a set that "starts at the beginning of the interval", the week, not at DTSTART',
    "FREQ=WEEKLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=1,3",
    "2024-10-23",
    "2024-10-23 2024-10-28 2024-10-30",
    "2024-10-23 2024-10-25 2024-10-28",
  ],
  [
    'what the rule leaves open, here the weekday, is "derived from DTSTART"',
    "FREQ=YEARLY;BYWEEKNO=1,2",
    "2013-01-08",
    "2013-01-08 2013-12-31 2014-01-07",
    "2013-01-08 2013-01-09 2013-01-10",
  ],
  [
    "1 January 2011 lies in week 52 of 2010 (ISO 8601)",
    "FREQ=YEARLY;BYWEEKNO=52;BYDAY=SA",
    "2007-12-25",
    "2007-12-29 2008-12-27 2009-12-26 2011-01-01",
    "2007-12-29 2008-12-27 2009-12-26 2011-12-31",
  ],
  [
    "31 December 1973 lies in week 1 of 1974, the 52nd from the end",
    "FREQ=YEARLY;BYWEEKNO=-52;BYDAY=MO",
    "1973-01-01",
    "1973-01-01 1973-12-31",
    "1973-01-01 1976-01-05",
  ],
];

describe("where the rrule library departs from the RFC", () => {
  test.each(DEFECTS)("%s: %s", (_why, text, start, ours, theirs) => {
    const count = ours.split(" ").length;
    expect(byUs(text, start, count).join(" ")).toBe(ours);
    expect(byLibrary(text, start, count).join(" ")).toBe(theirs);
  });
});
