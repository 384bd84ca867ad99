import { describe, expect, test } from "vitest";
import { BUSINESS_DAYS } from "../testing/bank-holidays.ts";
import { day, doneOn } from "../testing/due-records.ts";
import type { Calendar } from "./calendar.ts";
import { formatCivilDate } from "./civil.ts";
import { computeWindow, statusOn } from "./compute-window.ts";
import type { IntervalRule } from "./rule-schema.ts";

const first = (rule: IntervalRule, registered: string, calendar?: Calendar) =>
  computeWindow(rule, {
    done: [],
    registered: day(registered),
    ...(calendar === undefined ? {} : { calendar }),
  });
const dates = (rule: IntervalRule, registered: string, calendar?: Calendar) => {
  const { earliest, due, latest } = first(rule, registered, calendar);
  return [earliest, due, latest].map(formatCivilDate);
};

// The Fire Safety (England) Regulations 2022, SI 2022/547, reg. 10: in force on 23 January 2023,
// doors of common parts at least every 3 months, flat entrance doors at least every 12 (from memory).
describe("fire doors of a building standing when the regulations came into force", () => {
  const IN_FORCE = "2023-01-23";
  test.each([
    ["a door of the common parts", "P3M", "2023-04-23", "2023-07-23"],
    ["a flat entrance door", "P12M", "2024-01-23", "2025-01-23"],
  ] as const)("%s, at least every %s: first by %s", (_title, every, due, second) => {
    const rule: IntervalRule = { kind: "from-last-done", every, first: every, neverAfter: every };
    expect(dates(rule, IN_FORCE)[1]).toBe(due);
    expect(first(rule, IN_FORCE).why).toEqual({
      code: "first-due",
      params: { first: every, date: IN_FORCE },
    });
    const next = computeWindow(rule, { done: [doneOn(due)], registered: day(IN_FORCE) });
    expect(formatCivilDate(next.due)).toBe(second);
  });
});

describe("the first date", () => {
  test("has the margins of every other, and none before it was registered", () => {
    const about = { early: "P10D", late: "P5D", first: "P1M" };
    const expected = ["2026-01-26", "2026-02-05", "2026-02-10"];
    for (const rule of [
      { kind: "from-last-done", every: "P1M", ...about },
      { kind: "by-result", score: "score", ...about },
      { kind: "recurrence", rrule: "FREQ=MONTHLY", start: "2026-01-01", ...about },
    ] as const satisfies readonly IntervalRule[])
      expect(dates(rule, "2026-01-05")).toEqual(expected);
    const soon: IntervalRule = { kind: "from-last-done", every: "P1M", early: "P1M", first: "P1W" };
    expect(dates(soon, "2026-01-05")).toEqual(["2026-01-05", "2026-01-12", "2026-01-12"]);
  });

  test("of an anniversary has its window, and goes before a fixed series", () => {
    const rule: IntervalRule = {
      kind: "anniversary",
      every: "P1Y",
      anchor: "2026-10-31",
      within: "P1M",
      late: "P1W",
      afterLate: "restart",
      first: "P3M",
    };
    expect(dates(rule, "2026-01-05")).toEqual(["2026-03-06", "2026-04-05", "2026-04-12"]);
  });

  test("of other kinds has none", () => {
    for (const rule of [
      { kind: "each-period", period: "month", first: "P1M" },
      { kind: "spacing", min: "P9M", max: "P15M", first: "P1M" },
      { kind: "on-event", after: ["repaired"], within: "P7D", early: "P1D", first: "P1M" },
      { kind: "on-usage", point: "hours", every: 500, unit: "h", first: "P1M" },
    ] satisfies IntervalRule[])
      expect(dates(rule as IntervalRule, "2026-01-05")).toEqual([
        "2026-02-05",
        "2026-02-05",
        "2026-02-05",
      ]);
  });

  test("rolls back off days off, though never to before it was registered", () => {
    const rule: IntervalRule = { kind: "from-last-done", every: "P1M", first: "P1M" };
    // 28 February 2026 is a Saturday.
    expect(dates(rule, "2026-01-28", BUSINESS_DAYS)[1]).toBe("2026-02-27");
    const atOnce: IntervalRule = { kind: "from-last-done", every: "P1M", first: "P1D" };
    // Registered on a Saturday, due on the Sunday: no open day lies between.
    expect(dates(atOnce, "2026-02-28", BUSINESS_DAYS)[1]).toBe("2026-03-01");
  });

  test("passed is never done, not overdue, and not due before it", () => {
    const window = first({ kind: "from-last-done", every: "P1Y", first: "P3M" }, "2026-01-05");
    expect(
      ["2026-04-04", "2026-04-05", "2029-01-01"].map((on) => statusOn(window, day(on))),
    ).toEqual(["not-yet", "never-done", "never-done"]);
  });
});

describe("the time that a first check is given", () => {
  const read = (on: string, value: number) => ({
    entry: `read ${on}`,
    on: day(on),
    at: null,
    value,
    unit: "km",
  });

  test("does not put off what an event asks for before, nor its block", () => {
    const rule: IntervalRule = {
      kind: "on-event",
      after: ["repaired"],
      within: "P0D",
      blocks: true,
      first: "P6M",
    };
    const facts = { done: [], registered: day("2026-01-01") };
    const repaired = { kind: "repaired", entry: "e", on: day("2026-01-10"), at: null } as const;
    const window = computeWindow(rule, { ...facts, events: [repaired] });
    expect(formatCivilDate(window.due)).toBe("2026-01-10");
    expect(statusOn(window, day("2026-02-01"))).toBe("blocked");
    expect(formatCivilDate(computeWindow(rule, facts).due)).toBe("2026-07-01");
  });

  test("does not put off what use asks for before; what the meter does not tell waits for it", () => {
    const rule: IntervalRule = {
      kind: "on-usage",
      point: "km",
      every: 10_000,
      unit: "km",
      first: "P12M",
    };
    const facts = { done: [], registered: day("2026-01-01") };
    const used = computeWindow(rule, {
      ...facts,
      meter: [read("2026-01-02", 0), read("2026-04-01", 30_000)],
    });
    expect(formatCivilDate(used.due)).toBe("2026-04-01");
    expect(statusOn(used, day("2026-06-01"))).toBe("never-done");
    expect(used.why.code).toBe("never-done");
    const little = [read("2026-01-02", 0), read("2026-04-01", 100)];
    for (const meter of [[], little])
      expect(formatCivilDate(computeWindow(rule, { ...facts, meter }).due)).toBe("2027-01-01");
  });
});
