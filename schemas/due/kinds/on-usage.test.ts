import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { day, doneOn, REGISTERED } from "../../testing/due-records.ts";
import { formatCivilDate } from "../civil.ts";
import { computeWindow, statusOn } from "../compute-window.ts";
import type { MeterReading } from "../facts.ts";
import type { RuleOf } from "../rule-schema.ts";
import { hasDates } from "../window.ts";

type Rule = RuleOf<"on-usage">;

const SERVICE: Rule = { kind: "on-usage", point: "odometer", every: 10_000, unit: "km" };
const read = (on: string, value: number, unit = "km"): MeterReading => ({
  entry: `reading of ${on}`,
  on: day(on),
  at: null,
  value,
  unit,
});
const windowBy = (rule: Rule, done: string, ...meter: readonly MeterReading[]) =>
  computeWindow(rule, { done: [doneOn(done)], registered: REGISTERED, meter });
const told = (rule: Rule, done: string, ...meter: readonly MeterReading[]) => {
  const { due, undecided, why } = windowBy(rule, done, ...meter);
  return [undecided ? "undecided" : formatCivilDate(due), why.code];
};

describe("by use", () => {
  test("it is due on the day of the reading that passed it, and of no later one", () => {
    const meter = [read("2026-01-10", 40_000), read("2026-05-04", 50_200)];
    const { due, why } = windowBy(SERVICE, "2026-01-10", ...meter, read("2026-06-01", 53_000));
    expect([formatCivilDate(due), why.code]).toEqual(["2026-05-04", "usage-reached"]);
    expect(why.params).toMatchObject({ value: 50_200, read: "2026-05-04", at: 50_000 });
  });

  test("else on the day its mean use a day leads to", () => {
    const meter = [read("2026-01-10", 40_000), read("2026-01-30", 42_000)];
    const { due, why } = windowBy(SERVICE, "2026-01-10", ...meter);
    expect(formatCivilDate(due)).toBe("2026-04-20");
    expect([why.code, why.params]).toEqual([
      "by-usage",
      {
        every: 10_000,
        unit: "km",
        date: "2026-01-10",
        entry: doneOn("2026-01-10").entry,
        value: 42_000,
        read: "2026-01-30",
        rate: 100,
        at: 50_000,
      },
    ]);
  });

  test("margins in units of use become days by the same rate", () => {
    const rule = { ...SERVICE, early: 1000, late: 500 };
    const meter = [read("2026-01-10", 40_000), read("2026-01-30", 42_000)];
    const { earliest, due, latest } = windowBy(rule, "2026-01-10", ...meter);
    expect([due - earliest, latest - due]).toEqual([10, 5]);
  });

  test("a meter in miles counts for an interval in kilometres, one in hours does not", () => {
    const miles = [read("2026-01-10", 1000, "[mi_i]"), read("2026-05-01", 7300, "[mi_i]")];
    expect(told(SERVICE, "2026-01-10", ...miles)).toEqual(["2026-05-01", "usage-reached"]);
    const hours = [read("2026-01-10", 1000, "h"), read("2026-05-01", 99_000, "h")];
    expect(told(SERVICE, "2026-01-10", ...hours)).toEqual(["undecided", "needs-meter"]);
  });

  test("it counts from the last reading before it was done, were it read on another day", () => {
    const meter = [read("2026-01-05", 40_000), read("2026-01-25", 42_000)];
    expect(told(SERVICE, "2026-01-10", ...meter)).toEqual(["2026-04-15", "by-usage"]);
  });

  test("until it was read again it is taken to be used as before, from the day it was done", () => {
    const meter = [read("2026-01-01", 30_000), read("2026-01-11", 31_000)];
    expect(told(SERVICE, "2026-01-21", ...meter)).toEqual(["2026-05-01", "by-usage"]);
  });
});

test("what is hardly used is far off, and still a date", () => {
  const meter = [read("2026-01-10", 0), read("2026-11-10", 0.001)];
  const window = windowBy(SERVICE, "2026-01-10", ...meter);
  expect([hasDates(window), window.undecided]).toEqual([true, undefined]);
});

describe("what the meter does not tell is never silently not due", () => {
  test.each<[string, readonly MeterReading[]]>([
    ["never read", []],
    ["not read when it was done or before", [read("2026-02-01", 1000), read("2026-03-01", 2000)]],
    ["read once", [read("2026-01-10", 1000)]],
    ["read twice on one day", [read("2026-01-10", 1000), { ...read("2026-01-10", 1009), at: 5 }]],
    ["standing still", [read("2026-01-10", 1000), read("2026-03-01", 1000)]],
    ["no figure", [read("2026-01-10", Number.NaN)]],
  ])("%s: undecided", (_, meter) => {
    const window = windowBy(SERVICE, "2026-01-10", ...meter);
    expect([window.why.code, statusOn(window, day("2026-01-10"))]).toEqual([
      "needs-meter",
      "undecided",
    ]);
    expect(window.due).toBe(day("2026-01-10"));
  });

  test("never done: due since it was registered", () => {
    const window = computeWindow(SERVICE, { done: [], registered: REGISTERED, meter: [] });
    expect([window.due, window.why.code]).toEqual([REGISTERED, "never-done"]);
  });

  test("a meter replaced since it was done is undecided, and says so", () => {
    const meter = [read("2026-01-10", 40_000), read("2026-02-01", 10), read("2026-03-01", 900)];
    const { why, undecided } = windowBy(SERVICE, "2026-01-10", ...meter);
    expect([why.code, undecided]).toEqual(["needs-meter", true]);
    expect(why.moved).toEqual([
      { code: "meter-replaced", params: { point: "odometer", date: "2026-02-01" } },
    ]);
  });

  test("done once more, only the new meter counts", () => {
    const meter = [read("2026-01-10", 40_000), read("2026-02-01", 0), read("2026-02-11", 1000)];
    const { due, why } = windowBy(SERVICE, "2026-02-01", ...meter);
    expect([formatCivilDate(due), why.code]).toEqual(["2026-05-12", "by-usage"]);
    expect(why.moved?.map(({ code }) => code)).toEqual(["meter-replaced"]);
  });
});

describe("at the latest after a time", () => {
  const yearly: Rule = { ...SERVICE, orAfter: "P1Y" };

  test("the time comes first for what is little used", () => {
    const meter = [read("2026-01-10", 40_000), read("2026-01-30", 40_020)];
    const { due, latest, why } = windowBy(yearly, "2026-01-10", ...meter);
    expect([due, latest].map(formatCivilDate)).toEqual(["2027-01-10", "2027-01-10"]);
    expect(why.moved?.map(({ code }) => code)).toEqual(["usage-or-after"]);
  });

  test("and where no use is known", () => {
    expect(told(yearly, "2026-01-10", read("2026-01-10", 9))).toEqual([
      "2027-01-10",
      "usage-or-after",
    ]);
  });

  test("use comes first for what is much used", () => {
    const meter = [read("2026-01-10", 40_000), read("2026-01-30", 42_000)];
    expect(told(yearly, "2026-01-10", ...meter)).toEqual(["2026-04-20", "by-usage"]);
  });
});

const aReading = fc.record({
  entry: fc.uuid(),
  on: fc.integer({ min: day("2026-01-01"), max: day("2026-12-31") }),
  at: fc.option(fc.integer({ min: 0, max: 3 })),
  value: fc.integer({ min: 0, max: 3000 }),
  unit: fc.constantFrom("km", "m", "[mi_i]", "h"),
}) as fc.Arbitrary<MeterReading>;
const readings = fc.uniqueArray(aReading, { maxLength: 9, selector: ({ entry }) => entry });
const aRule = fc.record(
  {
    kind: fc.constant("on-usage" as const),
    point: fc.constant("odometer"),
    unit: fc.constant("km"),
    every: fc.integer({ min: 100, max: 2000 }),
    early: fc.integer({ min: 1, max: 100 }),
    late: fc.integer({ min: 1, max: 100 }),
    orAfter: fc.constantFrom("P1M", "P1Y"),
  },
  { requiredKeys: ["kind", "point", "unit", "every"] },
);
const aDay = fc.integer({ min: day("2026-02-01"), max: day("2026-11-30") });

test("readings in any order give the same window, in order and not before it was done", () => {
  const two = readings.chain((list) =>
    fc.tuple(
      fc.constant(list),
      fc.shuffledSubarray(list, { minLength: list.length, maxLength: list.length }),
    ),
  );
  fc.assert(
    fc.property(aRule, aDay, two, (rule, on, [list, other]) => {
      const done = formatCivilDate(on as MeterReading["on"]);
      const window = windowBy(rule, done, ...list);
      expect(windowBy(rule, done, ...other)).toEqual(window);
      expect(window.earliest).toBeLessThanOrEqual(window.due);
      expect(window.due).toBeLessThanOrEqual(window.latest);
      expect(window.due).toBeGreaterThanOrEqual(on);
      if (window.undecided) expect(window.why.code).toBe("needs-meter");
    }),
    { seed: 20261125, numRuns: 2000 },
  );
});

test("more use never makes it due later", () => {
  const steps = fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(aRule, steps, fc.integer({ min: 2, max: 5 }), (rule, uses, more) => {
      const metered = (times: number) => {
        let value = 1000;
        return [1, ...uses].map((use, index) => {
          value += index === 0 ? 0 : use * times;
          return read(
            formatCivilDate((day("2026-01-10") + index * 7) as MeterReading["on"]),
            value,
          );
        });
      };
      const due = (times: number) => windowBy(rule, "2026-01-10", ...metered(times)).due;
      expect(due(more)).toBeLessThanOrEqual(due(1));
    }),
    { seed: 7, numRuns: 1000 },
  );
});
