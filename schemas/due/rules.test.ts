import fc from "fast-check";
import { expect, test } from "vitest";
import type { CivilDate } from "../shared/ids.ts";
import { day, doneOn, REGISTERED, windowOf } from "../testing/due-records.ts";
import { computeWindow } from "./compute-window.ts";
import { addDuration, addTimes, durationOf } from "./duration.ts";
import type { IntervalRule, RuleOf } from "./rule-schema.ts";

fc.configureGlobal({ seed: 2026 });

const months = (min: number, max: number) => fc.integer({ min, max }).map((count) => `P${count}M`);
const days = (min: number, max: number) => fc.integer({ min, max }).map((count) => `P${count}D`);

const anniversary: fc.Arbitrary<RuleOf<"anniversary">> = fc.record(
  {
    kind: fc.constant("anniversary" as const),
    every: months(2, 36),
    within: days(1, 50),
    afterLate: fc.constantFrom("restart" as const, "keep" as const),
    late: days(0, 40),
  },
  { requiredKeys: ["kind", "every", "within", "afterLate"] },
);
const rules: fc.Arbitrary<IntervalRule> = fc.oneof(
  anniversary,
  fc.record({
    kind: fc.constant("from-last-done" as const),
    every: months(1, 36),
    late: days(0, 40),
  }),
  fc.record({
    kind: fc.constant("each-period" as const),
    period: fc.constantFrom(...(["week", "month", "quarter", "half-year", "year"] as const)),
  }),
  fc.record({ kind: fc.constant("spacing" as const), min: days(1, 60), max: days(60, 400) }),
);
const date = fc.integer({
  min: day("2000-01-01"),
  max: day("2060-12-31"),
}) as fc.Arbitrary<CivilDate>;
const history = fc.uniqueArray(date, { minLength: 1, maxLength: 8 });

test("the same records in any order give the same window", () => {
  const shuffled = history.chain((list) =>
    fc.tuple(
      fc.constant(list),
      fc.shuffledSubarray(list, { minLength: list.length, maxLength: list.length }),
    ),
  );
  fc.assert(
    fc.property(rules, shuffled, (rule, [list, other]) => {
      expect(windowOf(rule, ...other)).toEqual(windowOf(rule, ...list));
    }),
  );
});

test("no window, margin or kept anniversary passes the longest time the law allows", () => {
  fc.assert(
    fc.property(rules, history, days(1, 400), (rule, list, neverAfter) => {
      const window = windowOf({ ...rule, neverAfter }, ...list);
      const last = Math.max(...list) as CivilDate;
      const limit = addDuration(last, neverAfter);
      expect(Math.max(window.earliest, window.due, window.latest)).toBeLessThanOrEqual(limit);
      expect(window.earliest).toBeLessThanOrEqual(window.due);
      expect(window.due).toBeLessThanOrEqual(window.latest);
    }),
  );
});

test("done early inside the window never moves the anniversary, over 100 cycles", () => {
  fc.assert(
    fc.property(
      anniversary,
      date,
      fc.array(fc.nat(10_000), { minLength: 100, maxLength: 100 }),
      (rule, first, turns) => {
        const every = durationOf(rule.every);
        const done = [doneOn(first)];
        for (const [turn, pick] of turns.entries()) {
          const { earliest, due } = computeWindow(rule, { done, registered: REGISTERED });
          expect(due).toBe(addTimes(first, every, turn + 1));
          done.push(doneOn((earliest + (pick % (due - earliest + 1))) as CivilDate));
        }
      },
    ),
    { numRuns: 10 },
  );
});

test("a kept anniversary gives way to the longest time the law allows, and says so", () => {
  const rule: IntervalRule = {
    kind: "anniversary",
    every: "P12M",
    within: "P2M",
    afterLate: "restart",
    neverAfter: "P13M",
  };
  const window = windowOf(rule, "2026-02-10", "2026-12-11");
  expect(window.due).toBe(day("2028-01-11"));
  expect(window.why.code).toBe("anniversary-kept");
  expect(window.why.moved).toEqual([
    { code: "never-after", params: { limit: "P13M", date: "2028-01-11" } },
  ]);
});

// Control of Substances Hazardous to Health Regulations 2002, reg. 9: at least every 14 months.
test("local exhaust ventilation done a year on: no grace past 14 months", () => {
  const rule: IntervalRule = {
    kind: "from-last-done",
    every: "P12M",
    late: "P3M",
    neverAfter: "P14M",
  };
  const window = windowOf(rule, "2026-03-14");
  expect([window.due, window.latest]).toEqual([day("2027-03-14"), day("2027-05-14")]);
});
