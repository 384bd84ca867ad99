import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CivilDate } from "../../shared/ids.ts";
import { anyRule } from "../../testing/any-rrule.ts";
import { dates, day, firstOf, rule } from "../../testing/recurrence.ts";
import { between, lastOnOrBefore, nextAfter, occurrences } from "./occurrences.ts";
import type { RruleEnd } from "./rrule.ts";

fc.configureGlobal({ seed: 2028 });

const SKIPS = ["", "RSCALE=GREGORIAN;SKIP=BACKWARD;", "RSCALE=GREGORIAN;SKIP=FORWARD;"];
const skipped = fc
  .tuple(anyRule, fc.constantFrom(...SKIPS))
  .map(([{ text, start }, skip]) => ({ recurrence: rule(skip + text), start }));
const ahead = fc.integer({ min: -40, max: 12_000 });
const plus = (start: CivilDate, days: number) => (start + days) as CivilDate;

/** How a rule ends, read to its end. */
function end(text: string, start: string): RruleEnd {
  const walk = occurrences(rule(text), day(start));
  for (;;) {
    const next = walk.next();
    if (next.done) return next.value;
  }
}

describe("for any rule, with any skip", () => {
  test("occurrences come in order, each once, and none before DTSTART", () => {
    fc.assert(
      fc.property(skipped, ({ recurrence, start }) => {
        const found = firstOf(recurrence, start, 60);
        const inOrder = [...new Set(found)].sort((a, b) => a - b);
        expect(found).toEqual(inOrder);
        expect(found.every((date) => date >= start)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  test("the next after a day is the first of all that lies after it", () => {
    fc.assert(
      fc.property(skipped, ahead, ({ recurrence, start }, days) => {
        const from = plus(start, days);
        const all = between(recurrence, start, start, plus(start, 14_000));
        const wanted = all.find((date) => date > from);
        const next = nextAfter(recurrence, start, from);
        if (wanted !== undefined) expect(next).toEqual({ date: wanted });
        else if ("date" in next) expect(next.date).toBeGreaterThan(start + 14_000);
        else expect(next.ended).toMatch(/^(count-reached|until-passed|never-again)$/);
      }),
      { numRuns: 1000 },
    );
  });

  test("the last up to a day is the last of all that does not lie after it", () => {
    fc.assert(
      fc.property(skipped, ahead, ({ recurrence, start }, days) => {
        const to = plus(start, days);
        const all = between(recurrence, start, start, to);
        expect(lastOnOrBefore(recurrence, start, to)).toBe(all.at(-1));
      }),
      { numRuns: 1000 },
    );
  });

  test("a stretch cut in two gives the same days", () => {
    fc.assert(
      fc.property(skipped, ahead, ahead, ahead, ({ recurrence, start }, a, b, c) => {
        const [from = 0, cut = 0, to = 0] = [a, b, c].sort((x, y) => x - y);
        const part = (x: number, y: number) =>
          between(recurrence, start, plus(start, x), plus(start, y));
        expect([...part(from, cut), ...part(cut + 1, to)]).toEqual(part(from, to));
      }),
      { numRuns: 1000 },
    );
  });
});

describe("a rule ends with its reason", () => {
  test.each<[RruleEnd, string, string]>([
    ["never-again", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "2026-01-01"],
    ["never-again", "FREQ=MONTHLY;BYMONTH=2;BYMONTHDAY=30", "2026-01-01"],
    ["never-again", "FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30", "2026-01-01"],
    ["never-again", "FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30;COUNT=3", "2026-01-01"],
    ["never-again", "FREQ=DAILY;INTERVAL=7;BYDAY=TU", "2026-01-01"],
    ["never-again", "FREQ=MONTHLY;INTERVAL=12;BYMONTH=2", "2026-01-01"],
    ["never-again", "FREQ=MONTHLY;BYDAY=6MO", "2026-01-01"],
    ["never-again", "FREQ=YEARLY;INTERVAL=2;BYMONTH=2;BYMONTHDAY=29", "2025-01-01"],
    ["never-again", "FREQ=WEEKLY;BYDAY=MO,TU;BYSETPOS=3", "2026-01-01"],
    ["count-reached", "FREQ=YEARLY;COUNT=3", "2026-01-01"],
    ["until-passed", "FREQ=YEARLY;UNTIL=20300101", "2026-01-01"],
    ["until-passed", "FREQ=DAILY;UNTIL=20250101", "2026-01-01"],
    ["until-passed", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30;UNTIL=20300101", "2026-01-01"],
    ["calendar-ends", "FREQ=YEARLY;INTERVAL=1000", "2026-01-01"],
    ["calendar-ends", "FREQ=YEARLY;INTERVAL=4;BYMONTH=2;BYMONTHDAY=29", "2024-02-29"],
  ])("%s: %s from %s", (reason, text, start) => {
    expect(end(text, start)).toBe(reason);
  });

  test("the last before an end without days is the last there was", () => {
    const leap = rule("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29");
    const start = day("1896-02-29");
    expect(nextAfter(leap, start, start)).toEqual({ date: day("1904-02-29") });
    expect(lastOnOrBefore(leap, start, day("1904-02-28"))).toBe(start);
    const none = rule("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30");
    expect(lastOnOrBefore(none, start, day("9999-12-31"))).toBeUndefined();
    expect(lastOnOrBefore(leap, start, day("1896-02-28"))).toBeUndefined();
  });
});

describe("DTSTART", () => {
  test("is the first occurrence, and counts, where the rule gives it", () => {
    expect(dates("FREQ=MONTHLY;COUNT=2", "2026-03-14", 9)).toBe("2026-03-14 2026-04-14");
  });

  test("is none, and does not count, where the rule does not give it", () => {
    expect(dates("FREQ=MONTHLY;BYMONTHDAY=1;COUNT=2", "2026-03-14", 9)).toBe(
      "2026-04-01 2026-05-01",
    );
  });

  test("lies in the years that are written with four digits", () => {
    expect(() => nextAfter(rule("FREQ=DAILY"), 1e9 as CivilDate, day("2026-01-01"))).toThrow(
      RangeError,
    );
    expect(() => lastOnOrBefore(rule("FREQ=DAILY"), 0.5 as CivilDate, day("2026-01-01"))).toThrow(
      RangeError,
    );
  });
});

test("an UNTIL at midnight ends before its day, any other with it", () => {
  const last = (until: string) =>
    between(
      rule(`FREQ=DAILY;UNTIL=${until}`),
      day("1997-09-02"),
      0 as CivilDate,
      1e5 as CivilDate,
    ).at(-1);
  expect(last("19971224T000000Z")).toBe(day("1997-12-23"));
  expect(last("19971224T000001Z")).toBe(day("1997-12-24"));
  expect(last("19971224")).toBe(day("1997-12-24"));
});
