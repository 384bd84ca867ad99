import { describe, expect, test } from "vitest";
import { BUSINESS_DAYS } from "../testing/bank-holidays.ts";
import { day, doneOn } from "../testing/due-records.ts";
import { formatCivilDate } from "./civil.ts";
import type { DueFacts } from "./facts.ts";
import { forecast } from "./forecast.ts";
import type { IntervalRule } from "./rule-schema.ts";

const MONTH_ENDS: IntervalRule = {
  kind: "anniversary",
  every: "P1M",
  anchor: "2026-10-31",
  within: "P7D",
  afterLate: "restart",
};
const facts = (more: Partial<DueFacts> = {}): DueFacts => ({
  done: [],
  registered: day("2026-10-01"),
  ...more,
});
const dates = (rule: IntervalRule, given: DueFacts, count = 10, from = "2026-10-13") =>
  forecast(rule, given, { from: day(from), count }).map(({ window }) =>
    formatCivilDate(window.due),
  );

describe("the dates to come", () => {
  test("of a month's end stay at the end of each month", () => {
    expect(dates(MONTH_ENDS, facts(), 6)).toEqual([
      "2026-10-31",
      "2026-11-30",
      "2026-12-31",
      "2027-01-31",
      "2027-02-28",
      "2027-03-31",
    ]);
  });

  // Bank holidays of England and Wales as published: Monday 31 May 2027 is one.
  test("roll back from Sundays and bank holidays, and say where they would fall", () => {
    const done = [doneOn("2026-10-30")];
    const coming = forecast(MONTH_ENDS, facts({ done, calendar: BUSINESS_DAYS }), {
      from: day("2026-11-01"),
      count: 7,
    });
    expect(
      coming.map(({ window, plain }) => [formatCivilDate(window.due), formatCivilDate(plain)]),
    ).toEqual([
      ["2026-11-30", "2026-11-30"],
      ["2026-12-31", "2026-12-31"],
      ["2027-01-29", "2027-01-31"],
      ["2027-02-26", "2027-02-28"],
      ["2027-03-31", "2027-03-31"],
      ["2027-04-30", "2027-04-30"],
      ["2027-05-28", "2027-05-31"],
    ]);
  });

  test("count from today where it is overdue", () => {
    const rule: IntervalRule = { kind: "from-last-done", every: "P6M" };
    expect(dates(rule, facts({ done: [doneOn("2026-01-10")] }), 3)).toEqual([
      "2026-07-10",
      "2027-04-13",
      "2027-10-13",
    ]);
  });

  test("end where nothing asks for it, and where nothing moves on", () => {
    expect(dates({ kind: "on-event", after: ["repaired"], within: "P0D" }, facts())).toEqual([]);
    const atOnce = [{ ...doneOn("2026-10-13"), next: { grade: "at-once" } }];
    expect(dates({ kind: "by-result", score: "grade" }, facts({ done: atOnce }))).toEqual([
      "2026-10-13",
    ]);
  });

  test("go as far as the horizon and no further", () => {
    const rule: IntervalRule = { kind: "each-period", period: "week" };
    const coming = forecast(rule, facts({ done: [doneOn("2026-10-12")] }), {
      from: day("2026-10-13"),
      until: day("2027-10-13"),
    });
    expect(coming).toHaveLength(51);
  });

  // Ten hours a day: 500 hours are fifty days.
  test("by use go on as it has been used, and as the meter that is in now has", () => {
    const rule: IntervalRule = { kind: "on-usage", point: "hours", every: 500, unit: "h" };
    const reading = (on: string, value: number, unit = "h") =>
      ({ entry: `reading of ${on}`, on: day(on), at: null, value, unit }) as const;
    const done = [doneOn("2026-09-01")];
    const meter = [reading("2026-09-01", 4000), reading("2026-09-11", 4100)];
    expect(dates(rule, facts({ done, meter }), 3)).toEqual([
      "2026-10-21",
      "2026-12-10",
      "2027-01-29",
    ]);
    const inMinutes = [reading("2026-09-01", 240_000, "min"), reading("2026-09-11", 4100)];
    expect(dates(rule, facts({ done, meter: inMinutes }), 2)).toEqual(["2026-10-21", "2026-12-10"]);
    const replaced = [reading("2026-08-01", 90_000), ...meter];
    expect(dates(rule, facts({ done, meter: replaced }), 2)).toEqual(["2026-10-21", "2026-12-10"]);
  });

  test("are as it stands by the asset's own rule, then by the interval's", () => {
    const rule: IntervalRule = { kind: "from-last-done", every: "P6M" };
    const override = {
      rule: { kind: "from-last-done", every: "P1M" } as const,
      reason: "on trial",
      until: day("2026-12-31"),
    };
    const done = [doneOn("2026-10-10")];
    const coming = forecast(rule, facts({ done, override }), { from: day("2026-10-13"), count: 4 });
    expect(
      coming.map(({ window, plain }) => [formatCivilDate(window.due), formatCivilDate(plain)]),
    ).toEqual([
      ["2026-11-10", "2027-04-10"],
      ["2026-12-10", "2027-05-10"],
      ["2027-06-10", "2027-06-10"],
      ["2027-12-10", "2027-12-10"],
    ]);
  });

  test("fall where the law brings them where the rule itself has none", () => {
    const rule: IntervalRule = {
      kind: "on-event",
      after: ["repaired"],
      within: "P0D",
      neverAfter: "P1Y",
    };
    const done = [doneOn("2026-10-10")];
    const coming = forecast(rule, facts({ done }), { from: day("2026-10-13"), count: 2 });
    expect(
      coming.map(({ window, plain }) => [formatCivilDate(window.due), formatCivilDate(plain)]),
    ).toEqual([
      ["2027-10-10", "2027-10-10"],
      ["2028-10-10", "2028-10-10"],
    ]);
  });

  test("are at most a thousand, however far ahead is asked", () => {
    const rule: IntervalRule = { kind: "from-last-done", every: "P1D" };
    const far = { from: day("2026-10-13"), count: 1_000_000, until: day("2999-01-01") };
    expect(forecast(rule, facts({ done: [doneOn("2026-10-12")] }), far)).toHaveLength(1000);
    expect(forecast(rule, facts(), { ...far, count: 0 })).toEqual([]);
  });

  test("of what is undecided is one, until it can be told", () => {
    const rule: IntervalRule = { kind: "on-usage", point: "hours", every: 500, unit: "h" };
    const coming = forecast(rule, facts({ done: [doneOn("2026-09-01")] }), {
      from: day("2026-10-13"),
      count: 5,
    });
    expect(coming.map(({ window }) => window.undecided)).toEqual([true]);
  });
});
