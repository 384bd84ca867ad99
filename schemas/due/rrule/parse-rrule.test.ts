import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { RRULE_CODES } from "./codes.ts";
import { parseRrule } from "./parse-rrule.ts";

fc.configureGlobal({ seed: 2029 });

const faults = (text: string) => {
  const result = parseRrule(text);
  return result.ok ? [] : result.problems.map(({ code, params }) => ({ code, ...params }));
};

// Rule, code, and the words of the rule that the problem points at (null: at the whole).
const REFUSED: readonly (readonly [string, string, string | null])[] = [
  ["", "rrule-no-freq", null],
  ["", "rrule-no-part", ""],
  ["INTERVAL=2", "rrule-no-freq", null],
  ["FREQ=DAILY;;COUNT=2", "rrule-no-part", ""],
  ["FREQ=DAILY;COUNT", "rrule-no-part", "COUNT"],
  ["FREQ=DAILY;COUNT=", "rrule-no-part", "COUNT="],
  ["FREQ=DAILY;BYMONHT=2", "rrule-unknown-part", "BYMONHT"],
  ["FREQ=DAILY;X-OWN=2", "rrule-unknown-part", "X-OWN"],
  ["RRULE:FREQ=DAILY", "rrule-unknown-part", "RRULE:FREQ"],
  ["FREQ=DAILY; COUNT=2", "rrule-unknown-part", " COUNT"],
  ["FREQ=DAILY;COUNT=2;COUNT=3", "rrule-repeated-part", "COUNT=3"],
  ["FREQ=HOURLY", "rrule-sub-daily", "HOURLY"],
  ["FREQ=SECONDLY", "rrule-sub-daily", "SECONDLY"],
  ["FREQ=DAILY;BYHOUR=9", "rrule-sub-daily", "BYHOUR=9"],
  ["FREQ=DAILY;BYSECOND=0", "rrule-sub-daily", "BYSECOND=0"],
  ["FREQ=MONTLY", "rrule-bad-value", "MONTLY"],
  ["FREQ=DAILY;COUNT=two", "rrule-bad-value", "two"],
  ["FREQ=DAILY;COUNT=-1", "rrule-bad-value", "-1"],
  ["FREQ=DAILY;INTERVAL=1.5", "rrule-bad-value", "1.5"],
  ["FREQ=DAILY;BYMONTH=1,,2", "rrule-bad-value", ""],
  ["FREQ=YEARLY;BYMONTH=5L", "rrule-bad-value", "5L"],
  ["FREQ=DAILY;BYDAY=MO,XX", "rrule-bad-value", "XX"],
  ["FREQ=DAILY;WKST=MON", "rrule-bad-value", "MON"],
  ["FREQ=DAILY;UNTIL=20260230", "rrule-bad-value", "20260230"],
  ["FREQ=DAILY;UNTIL=2026-02-03", "rrule-bad-value", "2026-02-03"],
  ["FREQ=DAILY;UNTIL=20260203T250000Z", "rrule-bad-value", "20260203T250000Z"],
  ["FREQ=DAILY;COUNT=0", "rrule-out-of-range", "0"],
  ["FREQ=DAILY;INTERVAL=0", "rrule-out-of-range", "0"],
  ["FREQ=DAILY;INTERVAL=100001", "rrule-out-of-range", "100001"],
  ["FREQ=YEARLY;BYMONTH=1,13", "rrule-out-of-range", "13"],
  ["FREQ=YEARLY;BYMONTHDAY=-32", "rrule-out-of-range", "-32"],
  ["FREQ=YEARLY;BYYEARDAY=367", "rrule-out-of-range", "367"],
  ["FREQ=YEARLY;BYWEEKNO=54", "rrule-out-of-range", "54"],
  ["FREQ=YEARLY;BYDAY=54MO", "rrule-out-of-range", "54MO"],
  ["FREQ=YEARLY;BYDAY=0MO", "rrule-out-of-range", "0MO"],
  ["FREQ=YEARLY;BYMONTH=1;BYSETPOS=0", "rrule-out-of-range", "0"],
  ["FREQ=DAILY;COUNT=2;UNTIL=20260101", "rrule-count-and-until", "20260101"],
  ["FREQ=MONTHLY;BYWEEKNO=2", "rrule-not-with-freq", "2"],
  ["FREQ=DAILY;BYYEARDAY=2", "rrule-not-with-freq", "2"],
  ["FREQ=WEEKLY;BYMONTHDAY=2", "rrule-not-with-freq", "2"],
  ["FREQ=WEEKLY;BYDAY=2MO", "rrule-ordinal-not-here", "2MO"],
  ["FREQ=YEARLY;BYWEEKNO=20;BYDAY=1MO", "rrule-ordinal-not-here", "1MO"],
  ["FREQ=DAILY;BYSETPOS=1", "rrule-setpos-alone", "1"],
  ["FREQ=DAILY;RSCALE=HEBREW", "rrule-other-calendar", "HEBREW"],
  ["FREQ=MONTHLY;SKIP=FORWARD", "rrule-skip-without-rscale", "FORWARD"],
  ["FREQ=MONTHLY;RSCALE=GREGORIAN;SKIP=UP", "rrule-bad-value", "UP"],
];

describe("a rule that is not one is refused where it is wrong", () => {
  test.each(REFUSED)("%j: %s at %j", (text, code, words) => {
    const found = faults(text).find((fault) => fault.code === code);
    expect(found).toBeDefined();
    const place = found as unknown as { readonly start: number; readonly end: number };
    expect(words === null || text.slice(place.start, place.end)).toBe(words ?? true);
  });

  test("with the nearest word where one is near", () => {
    expect(faults("FREQ=DAILY;BYMONHT=2")).toMatchObject([{ nearest: "BYMONTH" }]);
    expect(faults("FREQ=MONTLY")).toMatchObject([{ nearest: "MONTHLY" }]);
  });

  test("with all that is wrong at once", () => {
    const codes = faults("FREQ=HOURLY;COUNT=0;BYMONTH=13;SKIP=OMIT").map(({ code }) => code);
    expect(codes).toEqual([
      "rrule-sub-daily",
      "rrule-out-of-range",
      "rrule-out-of-range",
      "rrule-skip-without-rscale",
    ]);
  });

  test("before it is read, where it is longer than any rule", () => {
    expect(faults(`FREQ=DAILY;BYMONTH=${"1,".repeat(5000)}`)).toEqual([
      { code: "rrule-too-long", limit: 1000 },
    ]);
  });
});

test("a rule reads the same in any case, any order, and with a semicolon at its end", () => {
  const wanted = parseRrule("FREQ=MONTHLY;BYDAY=-1FR;BYMONTH=1,6;WKST=SU");
  expect(wanted.ok).toBe(true);
  expect(parseRrule("bymonth=6,1,6;wkst=su;Freq=monthly;byday=-1fr;")).toEqual(wanted);
});

test("whatever text is given, the answer is a rule or problems with all their parameters", () => {
  const words = fc.constantFrom(
    "FREQ",
    "=",
    "DAILY",
    ";",
    "BYDAY",
    "MO",
    ",",
    "-1",
    "UNTIL",
    "2026",
  );
  const text = fc.oneof(
    fc.string({ unit: "grapheme" }),
    fc.array(words, { maxLength: 12 }).map((parts) => parts.join("")),
  );
  fc.assert(
    fc.property(text, (given) => {
      const result = parseRrule(given);
      const known: Readonly<Record<string, readonly string[]>> = RRULE_CODES;
      for (const { code, params } of result.ok ? [] : result.problems)
        expect(Object.keys(params).sort()).toEqual([...(known[code] ?? ["no such code"])].sort());
    }),
    { numRuns: 5000 },
  );
});
