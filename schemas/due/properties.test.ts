import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CivilDate } from "../shared/ids.ts";
import {
  anyDay,
  anyFacts,
  anyIntervalRule,
  anyRuleOf,
  RULE_KINDS,
} from "../testing/any-interval.ts";
import { day, doneOn, REGISTERED } from "../testing/due-records.ts";
import { computeWindow, statusOn } from "./compute-window.ts";
import { addDuration, addTimes, durationOf } from "./duration.ts";
import { forecast } from "./forecast.ts";
import { periodOf } from "./kinds/each-period.ts";
import { latestDay, needsHistory } from "./latest-day.ts";
import { occurrences } from "./rrule/occurrences.ts";
import { readRrule } from "./rrule/read-rrule.ts";
import type { IntervalRule, RuleOf } from "./rule-schema.ts";
import type { DoneRecord } from "./window.ts";

const CYCLES = 100;
/** Where in each window it is done, as a share of it. */
const turns = fc.array(fc.nat(9999), { minLength: CYCLES, maxLength: CYCLES });
const within = (pick: number, from: number, to: number) =>
  (from + (pick % (to - from + 1))) as CivilDate;
const bare = <R extends IntervalRule>({ neverAfter: _, first: __, ...rule }: R): R => rule as R;
const shuffled = <T>(list: readonly T[]) =>
  fc.shuffledSubarray([...list], { minLength: list.length, maxLength: list.length });

describe("over 100 cycles, each done somewhere in its window, dates do not drift", () => {
  test("of a fixed series", () => {
    fc.assert(
      fc.property(anyRuleOf("anniversary"), turns, (given, picks) => {
        const rule = { ...bare(given), anchor: "2024-02-29" };
        const every = durationOf(rule.every);
        const done: DoneRecord[] = [];
        for (const [cycle, pick] of picks.entries()) {
          const { earliest, due } = computeWindow(rule, { done, registered: day("2024-02-29") });
          expect(due).toBe(addTimes(day("2024-02-29"), every, cycle));
          done.push(doneOn(within(pick, earliest, due)));
        }
      }),
      { seed: 1, numRuns: 30 },
    );
  });

  test("of once in each period, on any day of it", () => {
    fc.assert(
      fc.property(anyRuleOf("each-period"), anyDay, turns, (given, start, picks) => {
        const rule = bare(given);
        let on = start;
        for (const pick of picks) {
          const { next } = periodOf(rule.period, on);
          const { earliest, latest } = computeWindow(rule, {
            done: [doneOn(on)],
            registered: REGISTERED,
          });
          expect([earliest, latest]).toEqual([next, periodOf(rule.period, next).next - 1]);
          on = within(pick, earliest, latest);
        }
      }),
      { seed: 2, numRuns: 30 },
    );
  });

  test("of a recurrence", () => {
    const rules = [
      "FREQ=MONTHLY;BYMONTHDAY=-1",
      "FREQ=WEEKLY;BYDAY=MO",
      "FREQ=MONTHLY;INTERVAL=3;BYDAY=1WE",
    ];
    fc.assert(
      fc.property(fc.constantFrom(...rules), fc.nat(6), turns, (rrule, early, picks) => {
        const start = "2026-01-01";
        const rule: RuleOf<"recurrence"> = {
          kind: "recurrence",
          rrule,
          start,
          early: `P${early}D`,
        };
        const dates = occurrences(readRrule(rrule), day(start));
        let done: readonly DoneRecord[] = [];
        for (const pick of picks) {
          const { earliest, due } = computeWindow(rule, { done, registered: day(start) });
          expect(due).toBe(dates.next().value);
          done = [doneOn(within(pick, earliest, due))];
        }
      }),
      { seed: 3, numRuns: 30 },
    );
  });
});

test("done inside its window, once or again, an anniversary never moves", () => {
  fc.assert(
    fc.property(anyRuleOf("anniversary"), anyDay, turns, (given, start, picks) => {
      const { anchor: _, ...rule } = bare(given);
      const every = durationOf(rule.every);
      const done = [doneOn(start)];
      const facts = { registered: REGISTERED };
      for (const [cycle, pick] of picks.slice(0, 20).entries()) {
        const { earliest, due } = computeWindow(rule, { ...facts, done });
        expect(due).toBe(addTimes(start, every, cycle + 1));
        const on = within(pick, earliest, due);
        done.push(doneOn(on), doneOn(within(pick * 7, on, due)));
      }
    }),
    { seed: 4, numRuns: 50 },
  );
});

describe.each(RULE_KINDS)("by a rule of %s", (kind) => {
  test("no calendar, margin or override leads past the longest time the law allows", () => {
    fc.assert(
      fc.property(anyRuleOf(kind), anyFacts, (rule, facts) => {
        const { neverAfter = "P400D" } = rule;
        const window = computeWindow({ ...rule, neverAfter }, facts);
        const counted = facts.done.find(({ entry }) => entry === window.from);
        if (counted === undefined) return;
        const limit = addDuration(counted.on, neverAfter);
        expect(Math.max(window.earliest, window.due, window.latest)).toBeLessThanOrEqual(limit);
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  test("a window is in order and not before it was done", () => {
    fc.assert(
      fc.property(anyRuleOf(kind), anyFacts, (rule, facts) => {
        const { earliest, due, latest, from } = computeWindow(rule, facts);
        const counted = facts.done.find(({ entry }) => entry === from)?.on ?? facts.registered;
        expect(earliest).toBeLessThanOrEqual(due);
        expect(due).toBeLessThanOrEqual(latest);
        expect(earliest).toBeGreaterThanOrEqual(counted);
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  test("records, events and readings in any order give the same window", () => {
    const other = anyFacts.chain((facts) =>
      fc
        .tuple(shuffled(facts.done), shuffled(facts.events ?? []), shuffled(facts.meter ?? []))
        .map(([done, events, meter]) => [facts, { ...facts, done, events, meter }] as const),
    );
    fc.assert(
      fc.property(anyRuleOf(kind), other, (rule, [facts, reordered]) => {
        expect(computeWindow(rule, reordered)).toEqual(computeWindow(rule, facts));
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test("the records of the last day alone give the same window, where history says no more", () => {
    if (needsHistory({ kind } as IntervalRule)) return expect(kind).toMatch(/anniversary|spacing/);
    fc.assert(
      fc.property(anyRuleOf(kind), anyFacts, (rule, { override: _, ...facts }) => {
        const done = latestDay(facts.done);
        expect(computeWindow(rule, { ...facts, done })).toEqual(computeWindow(rule, facts));
      }),
      { seed: 10, numRuns: 300 },
    );
  });

  test("dates to come ascend and end, and a day after the last is overdue or asks", () => {
    fc.assert(
      fc.property(anyRuleOf(kind), anyFacts, anyDay, (rule, facts, from) => {
        const coming = forecast(rule, facts, { from, count: 25 });
        expect(coming.length).toBeLessThanOrEqual(25);
        for (const [at, { window }] of coming.entries()) {
          const before = coming[at - 1]?.window.due;
          if (before !== undefined)
            expect(window.due).toBeGreaterThan(Math.max(before, at === 1 ? from : before));
          const asks = ["overdue", "never-done", "blocked", "undecided"];
          expect(asks).toContain(statusOn(window, (window.latest + 1) as CivilDate));
        }
      }),
      { seed: 8, numRuns: 150 },
    );
  });
});

test("whatever the rule, what cannot be told is undecided on every day", () => {
  fc.assert(
    fc.property(anyIntervalRule, anyFacts, anyDay, (rule, facts, on) => {
      const window = computeWindow(rule, facts);
      if (window.undecided !== true) return;
      expect(["undecided", "blocked"]).toContain(statusOn(window, on));
      expect(window.due).toBeLessThanOrEqual(
        Math.max(facts.registered, window.lastDone ?? 0, facts.override?.until ?? 0),
      );
    }),
    { seed: 9, numRuns: 2000 },
  );
});
