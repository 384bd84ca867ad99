import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CivilDate } from "../shared/ids.ts";
import { formatCivilDate, parseCivilDate } from "./civil.ts";
import { computeWindow, statusOn } from "./compute-window.ts";
import { latestDay } from "./latest-day.ts";
import type { IntervalRule } from "./rule-schema.ts";
import type { DoneRecord } from "./window.ts";

fc.configureGlobal({ seed: 2027 });

const day = (iso: string): CivilDate => {
  const parsed = parseCivilDate(iso);
  if (parsed === undefined) throw new Error(`${iso} is no date`);
  return parsed;
};
const REGISTERED = day("2020-01-01");
const done = (on: string, more: Partial<DoneRecord> = {}): DoneRecord => ({
  entry: `entry of ${on}`,
  on: day(on),
  at: null,
  counts: true,
  next: {},
  ...more,
});
const written = (rule: IntervalRule, records: readonly DoneRecord[]) => {
  const { earliest, due, latest, from, why } = computeWindow(rule, {
    done: records,
    registered: REGISTERED,
  });
  return [earliest, due, latest].map(formatCivilDate).concat(from ?? "-", why.code);
};

const HALF_YEARLY: IntervalRule = { kind: "from-last-done", every: "P6M" };
const BY_SCORE: IntervalRule = { kind: "by-result", score: "score", early: "P1M", late: "P10D" };
const scored = (on: string, next: string | null, more: Partial<DoneRecord> = {}) =>
  done(on, { next: { score: next }, ...more });

describe("from last done", () => {
  test("what was never done is due on the day it was registered", () => {
    const window = computeWindow(HALF_YEARLY, { done: [], registered: REGISTERED });
    expect(window.due).toBe(REGISTERED);
    expect(window.from).toBeNull();
    expect(window.why.code).toBe("never-done");
    expect(statusOn(window, (REGISTERED - 1) as CivilDate)).toBe("not-yet");
    expect(statusOn(window, REGISTERED)).toBe("never-done");
    expect(statusOn(window, day("2030-01-01"))).toBe("never-done");
  });

  // A US hospital accreditor's published worked example: 3 months, 10 days either side.
  test("15 March 2015 with 3 months and 10 days either side: 5 to 25 June, due on the 15th", () => {
    const rule: IntervalRule = {
      kind: "from-last-done",
      every: "P3M",
      early: "P10D",
      late: "P10D",
    };
    expect(written(rule, [done("2015-03-15")]).slice(0, 3)).toEqual([
      "2015-06-05",
      "2015-06-15",
      "2015-06-25",
    ]);
  });

  test("a record that does not count moves nothing, however late it is", () => {
    const records = [done("2024-01-31"), done("2024-05-01", { counts: false })];
    expect(written(HALF_YEARLY, records)[1]).toBe("2024-07-31");
  });

  test("a date brought forward moves the due date and says that it is one", () => {
    const carried = done("2024-01-31", { counts: false, broughtForward: true });
    expect(written(HALF_YEARLY, [carried]).slice(1)).toEqual([
      "2024-07-31",
      "2024-07-31",
      "entry of 2024-01-31",
      "brought-forward",
    ]);
  });

  test("on one date an inspection goes before a date brought forward", () => {
    const carried = done("2024-01-31", { entry: "z", broughtForward: true });
    expect(written(HALF_YEARLY, [carried, done("2024-01-31")])[4]).toBe("from-last-done");
  });

  test("an early margin wider than the interval opens no window before it was done", () => {
    const rule: IntervalRule = { kind: "from-last-done", every: "P1M", early: "P2M" };
    expect(written(rule, [done("2024-01-31")])[0]).toBe("2024-01-31");
  });
});

describe("by result", () => {
  test("the band's interval sets the date, with its margins", () => {
    expect(written(BY_SCORE, [scored("2024-02-29", "P1Y")])).toEqual([
      "2025-01-28",
      "2025-02-28",
      "2025-03-10",
      "entry of 2024-02-29",
      "by-result",
    ]);
  });

  test.each([
    ["at-once", "at-once"],
    [null, "no-interval-from-result"],
  ])("a result of %j is due on the day done and has no grace", (next, code) => {
    const window = computeWindow(BY_SCORE, {
      done: [scored("2024-02-29", next)],
      registered: REGISTERED,
    });
    expect(window).toMatchObject({ due: day("2024-02-29"), latest: day("2024-02-29") });
    expect(window.why.code).toBe(code);
    expect(statusOn(window, day("2024-03-01"))).toBe("overdue");
  });

  test("a record without the score is due on the day done, even named like a method", () => {
    const rule: IntervalRule = { kind: "by-result", score: "constructor" };
    expect(written(rule, [done("2024-02-29")])[4]).toBe("no-interval-from-result");
  });

  test("on one date with an instant unknown the earliest due date wins", () => {
    const records = [
      scored("2024-03-01", "P2Y", { entry: "b", at: 5 }),
      scored("2024-03-01", "P1Y", { entry: "a" }),
    ];
    expect(written(BY_SCORE, records)[1]).toBe("2025-03-01");
  });

  test("on one date with every instant known the last wins", () => {
    const records = [
      scored("2024-03-01", "P2Y", { entry: "a", at: 5 }),
      scored("2024-03-01", "P1Y", { entry: "b", at: 4 }),
    ];
    expect(written(BY_SCORE, records)[1]).toBe("2026-03-01");
  });
});

test("overdue begins after the latest date, and both ends belong to the window", () => {
  const rule: IntervalRule = { kind: "from-last-done", every: "P1M", early: "P5D", late: "P5D" };
  const window = computeWindow(rule, { done: [done("2024-01-15")], registered: REGISTERED });
  const at = (iso: string) => statusOn(window, day(iso));
  expect(["09", "10", "14", "15", "16", "20", "21"].map((d) => at(`2024-02-${d}`))).toEqual([
    "not-yet",
    "early",
    "early",
    "due",
    "late-window",
    "late-window",
    "overdue",
  ]);
});

describe("arrival", () => {
  const record = fc.record({
    entry: fc.uuid(),
    on: fc.integer({ min: 18_000, max: 18_004 }).map((on) => on as CivilDate),
    at: fc.option(fc.integer({ min: 0, max: 3 })),
    counts: fc.boolean(),
    next: fc.record({ score: fc.constantFrom("P1Y", "P2Y", "P3Y", "at-once", null) }),
    broughtForward: fc.boolean(),
  });
  const records = fc.uniqueArray(record, { selector: (r) => r.entry, maxLength: 8 });
  const rules = fc.constantFrom(HALF_YEARLY, BY_SCORE);

  test("the order in which records arrive changes nothing", () => {
    fc.assert(
      fc.property(
        rules,
        records.chain((list) =>
          fc.tuple(
            fc.constant(list),
            fc.shuffledSubarray(list, { minLength: list.length, maxLength: list.length }),
          ),
        ),
        (rule, [list, shuffled]) => {
          expect(computeWindow(rule, { done: shuffled, registered: REGISTERED })).toEqual(
            computeWindow(rule, { done: list, registered: REGISTERED }),
          );
        },
      ),
    );
  });

  test("keeping only the latest day loses nothing", () => {
    fc.assert(
      fc.property(rules, records, (rule, list) => {
        let kept: readonly DoneRecord[] = [];
        for (const next of list) kept = latestDay([...kept, next]);
        expect(computeWindow(rule, { done: kept, registered: REGISTERED })).toEqual(
          computeWindow(rule, { done: list, registered: REGISTERED }),
        );
      }),
    );
  });

  test("a hundred inspections, each done when due, leave no drift in the interval", () => {
    const rule: IntervalRule = { kind: "from-last-done", every: "P1Y" };
    let on = day("2000-03-01");
    for (let cycle = 0; cycle < 100; cycle++)
      on = computeWindow(rule, { done: [done(formatCivilDate(on))], registered: REGISTERED }).due;
    expect(formatCivilDate(on)).toBe("2100-03-01");
  });
});
