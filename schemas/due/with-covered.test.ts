import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CivilDate } from "../shared/ids.ts";
import { interval } from "../testing/defined-interval.ts";
import { day, doneOn, REGISTERED } from "../testing/due-records.ts";
import { formatCivilDate } from "./civil.ts";
import { computeWindow } from "./compute-window.ts";
import { coverPlan } from "./covering.ts";
import type { IntervalRule } from "./rule-schema.ts";
import type { DoneRecord } from "./window.ts";
import { withCovered } from "./with-covered.ts";

const MONTHLY: IntervalRule = { kind: "from-last-done", every: "P1M", early: "P7D", late: "P7D" };
const QUARTERLY: IntervalRule = { kind: "from-last-done", every: "P3M", early: "P14D" };
const YEARLY: IntervalRule = { kind: "from-last-done", every: "P1Y" };
const LOOK = { gauge: "block" } as const;
const INTERVALS = [
  interval("monthly", MONTHLY, LOOK),
  interval("quarterly", QUARTERLY, LOOK, { covers: ["monthly"] }),
  interval("yearly", YEARLY, LOOK, { covers: ["quarterly"] }),
];
const PLAN = coverPlan(INTERVALS);
type Records = Readonly<Record<string, readonly DoneRecord[]>>;

const named = (id: string, dates: readonly (string | CivilDate)[]): readonly DoneRecord[] =>
  dates.map((on) => ({ ...doneOn(on), entry: `${id} ${doneOn(on).entry}` }));
const cover = (records: Records, plan = PLAN) =>
  withCovered(plan, {
    records: (id) => records[id] ?? [],
    facts: () => ({ registered: REGISTERED }),
  });
const told = (records: Records) =>
  cover(records).covered.map(({ interval: id, on }) => `${id} ${formatCivilDate(on)}`);

describe("a longer check stands for a shorter one", () => {
  // The monthly of 10 March opens on 3 April, is due on the 10th and closes on the 17th.
  test.each([
    ["2026-04-02", []],
    ["2026-04-03", ["monthly 2026-04-03"]],
    ["2026-04-17", ["monthly 2026-04-17"]],
    ["2026-04-18", []],
  ])("only inside its window: %s", (on, covered) => {
    const records = { monthly: named("monthly", ["2026-03-10"]), quarterly: named("q", [on]) };
    expect(told(records)).toEqual(covered);
  });

  test("not before that was ever done itself", () => {
    expect(told({ quarterly: named("q", ["2026-04-10"]) })).toEqual([]);
  });

  test("by inspections that count, and by no date from old papers", () => {
    for (const as of [{ counts: false, broughtForward: true }, { counts: false }]) {
      const quarterly = named("q", ["2026-04-10"]).map((one) => ({ ...one, ...as }));
      expect(told({ monthly: named("m", ["2026-03-10"]), quarterly })).toEqual([]);
    }
  });

  test("not by one of an older issue that did not ask its points yet", () => {
    const records: Records = {
      monthly: named("m", ["2026-03-10"]),
      quarterly: named("q", ["2026-04-09", "2026-05-08"]),
    };
    const { covered } = withCovered(PLAN, {
      records: (id) => records[id] ?? [],
      facts: () => ({ registered: REGISTERED }),
      asks: ({ on }, shorter) => shorter !== "monthly" || on !== day("2026-04-09"),
    });
    expect(covered).toEqual([]);
    expect(told(records)).toHaveLength(2);
  });

  test("never the reverse", () => {
    const records = { monthly: named("m", ["2026-06-08"]), quarterly: named("q", ["2026-03-10"]) };
    expect(told(records)).toEqual([]);
  });

  test("by a check between them too, and says which check it was", () => {
    const records = {
      monthly: named("m", ["2026-05-08"]),
      quarterly: named("q", ["2026-03-08"]),
      yearly: named("y", ["2026-06-05"]),
    };
    expect(told(records)).toEqual(["quarterly 2026-06-05", "monthly 2026-06-05"]);
    const done = cover(records).done("monthly");
    const { due, why } = computeWindow(MONTHLY, { done, registered: REGISTERED });
    expect(formatCivilDate(due)).toBe("2026-07-05");
    expect(why.moved).toEqual([
      { code: "covered-by-longer", params: { title: "yearly", date: "2026-06-05" } },
    ]);
  });

  test("once, were two of them to stand for it", () => {
    const both = coverPlan([
      interval("monthly", MONTHLY, LOOK),
      interval("quarterly", QUARTERLY, LOOK, { covers: ["monthly"] }),
      interval("yearly", YEARLY, LOOK, { covers: ["monthly", "quarterly"] }),
    ]);
    const records = {
      monthly: named("m", ["2026-05-08"]),
      quarterly: named("q", ["2026-03-08"]),
      yearly: named("y", ["2026-06-05"]),
    };
    expect(cover(records, both).covered).toHaveLength(2);
  });
});

test("where nothing covers the records are those that were given", () => {
  const monthly = named("m", ["2026-03-10"]);
  const { done, covered } = cover({ monthly }, []);
  expect(done("monthly")).toBe(monthly);
  expect(covered).toEqual([]);
});

test("the order of intervals and of arrival changes nothing, and no cover lies outside a window", () => {
  const from = day("2026-01-01");
  const some = fc.uniqueArray(
    fc.integer({ min: from, max: from + 400 }) as fc.Arbitrary<CivilDate>,
    { maxLength: 8 },
  );
  fc.assert(
    fc.property(some, some, some, (m, q, y) => {
      const made = (flip: boolean) => {
        const turn = <T>(list: readonly T[]) => (flip ? [...list].reverse() : list);
        const records = {
          monthly: turn(named("m", m)),
          quarterly: turn(named("q", q)),
          yearly: turn(named("y", y)),
        };
        const { done, covered } = cover(records, coverPlan(turn(INTERVALS)));
        const windowOf = (id: string, rule: IntervalRule) =>
          computeWindow(rule, { done: done(id), registered: REGISTERED });
        return {
          covered,
          monthly: windowOf("monthly", MONTHLY),
          q: windowOf("quarterly", QUARTERLY),
        };
      };
      expect(made(true)).toEqual(made(false));
      const { covered } = made(false);
      for (const { interval: id, on } of covered.filter((one) => one.interval === "monthly")) {
        const before = [...m, ...covered.flatMap((one) => (one.interval === id ? [one.on] : []))];
        const last = Math.max(...before.filter((one) => one < on)) as CivilDate;
        const { earliest, latest } = computeWindow(MONTHLY, {
          done: [doneOn(last)],
          registered: REGISTERED,
        });
        expect(on).toBeGreaterThanOrEqual(earliest);
        expect(on).toBeLessThanOrEqual(latest);
      }
    }),
    { seed: 5, numRuns: 500 },
  );
});
