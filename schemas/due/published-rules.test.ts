import { describe, expect, test } from "vitest";
import { datesOf, day, doneOn, dueOf } from "../testing/due-records.ts";
import { civilDate, formatCivilDate } from "./civil.ts";
import { computeWindow } from "./compute-window.ts";
import { addDuration } from "./duration.ts";
import { forecast } from "./forecast.ts";
import type { IntervalRule } from "./rule-schema.ts";

const coming = (rule: IntervalRule, registered: string, count: number) =>
  forecast(rule, { done: [], registered: day(registered) }, { from: day(registered), count }).map(
    ({ window }) => formatCivilDate(window.due),
  );

// Worked by hand from the calendar: 2028 is a leap year.
test("monthly from 31 January 2026 to 29 February 2028, nothing ratchets to the 28th", () => {
  const rule: IntervalRule = {
    kind: "anniversary",
    every: "P1M",
    anchor: "2026-01-31",
    within: "P1W",
    afterLate: "restart",
  };
  const ends = Array.from({ length: 26 }, (_, month) =>
    formatCivilDate(
      (civilDate(2026 + Math.floor((month + 1) / 12), ((month + 1) % 12) + 1, 1) - 1) as ReturnType<
        typeof day
      >,
    ),
  );
  expect(coming(rule, "2026-01-31", 26)).toEqual(ends);
  expect(ends.slice(0, 4)).toEqual(["2026-01-31", "2026-02-28", "2026-03-31", "2026-04-30"]);
  expect(ends.at(-1)).toBe("2028-02-29");
});

test("29 February 2024 and 12 months: 28 February 2025; and 48 months: 29 February 2028", () => {
  const from = (every: string) => dueOf({ kind: "from-last-done", every }, "2024-02-29");
  expect([from("P12M"), from("P48M")]).toEqual(["2025-02-28", "2028-02-29"]);
});

// Time frames of a US hospital accreditor as a trade body's page quotes them.
describe("from last done, either side", () => {
  test.each([
    ["P36M", "P45D", "2026-03-14", ["2029-01-28", "2029-03-14", "2029-04-28"]],
    ["P12M", "P30D", "2026-03-14", ["2027-02-12", "2027-03-14", "2027-04-13"]],
    ["P6M", "P20D", "2026-03-14", ["2026-08-25", "2026-09-14", "2026-10-04"]],
    ["P3M", "P10D", "2026-03-14", ["2026-06-04", "2026-06-14", "2026-06-24"]],
  ])("%s, %s from %s", (every, margin, done, dates) => {
    expect(datesOf({ kind: "from-last-done", every, early: margin, late: margin }, done)).toEqual(
      dates,
    );
  });
});

// Ladders by use, as a local authority's practitioner gives it in a trade forum.
describe("a ladder by how often it is used", () => {
  const rule: IntervalRule = {
    kind: "by-risk",
    table: {
      policy: "unique",
      inputs: ["asset.use"],
      rules: [
        ["daily", "P3M"],
        ["weekly", "P3M"],
        ["fortnightly", "P6M"],
        ["monthly", "P6M"],
        ["less", "P12M"],
      ].map(([use = "", then = ""]) => ({ when: [use], then })),
    },
    worse: { use: ["less", "monthly", "fortnightly", "weekly", "daily"] },
  };
  test.each([
    ["daily", "2026-06-14"],
    ["weekly", "2026-06-14"],
    ["monthly", "2026-09-14"],
    ["less", "2027-03-14"],
  ])("%s: due %s", (use, due) => {
    const facts = { done: [doneOn("2026-03-14")], registered: day("2026-01-01") };
    const window = computeWindow(rule, { ...facts, particulars: { use } });
    expect(formatCivilDate(window.due)).toBe(due);
    expect(computeWindow(rule, facts).undecided).toBe(true);
  });
});

// The Lifting Operations and Lifting Equipment Regulations 1998, reg. 9(3)(a): at least every 6
// months for accessories and for lifting persons, at least every 12 for the rest (from memory).
describe("lifting equipment", () => {
  const rule = (every: string): IntervalRule => ({
    kind: "anniversary",
    every,
    within: "P1M",
    afterLate: "restart",
    neverAfter: every,
  });
  test.each([
    ["an accessory", "P6M", "2026-08-31", "2027-02-28"],
    ["other equipment", "P12M", "2026-02-28", "2027-02-28"],
  ])("%s, at least every %s: done %s, due %s", (_title, every, done, due) => {
    expect(dueOf(rule(every), done)).toBe(due);
  });

  test("done early the anniversary gives way: never more than 6 months pass", () => {
    expect(dueOf(rule("P6M"), "2026-01-15", "2026-06-20")).toBe("2026-12-20");
  });
});

// The Control of Substances Hazardous to Health Regulations 2002, reg. 9(2)(a): at least every 14
// months (from memory).
test("local exhaust ventilation: each twelfth month, and however it slips never after 14", () => {
  const rule: IntervalRule = {
    kind: "anniversary",
    every: "P12M",
    within: "P2M",
    late: "P6M",
    afterLate: "keep",
    neverAfter: "P14M",
  };
  expect(datesOf(rule, "2026-03-14")).toEqual(["2027-01-15", "2027-03-14", "2027-05-14"]);
  expect(datesOf(rule, "2026-03-14", "2027-01-15")).toEqual([
    "2028-01-15",
    "2028-03-14",
    "2028-03-15",
  ]);
});

// "A month less a day" before it runs out, as a vehicle's yearly test counts: a month that ends with
// the last day takes that day in, so `P1M` is all there is to write (guidance on the Motor Vehicles
// (Tests) Regulations 1981, from memory).
test.each([
  ["2026-05-15", "2026-04-16"],
  ["2027-03-31", "2027-03-01"],
  ["2028-03-31", "2028-03-01"],
  ["2027-01-01", "2026-12-02"],
])("a test that runs out on %s may be renewed from %s on", (due, opens) => {
  const rule: IntervalRule = {
    kind: "anniversary",
    every: "P1Y",
    anchor: due,
    within: "P1M",
    afterLate: "restart",
  };
  const before = formatCivilDate((day(opens) - 1) as ReturnType<typeof day>);
  expect(dueOf(rule, opens)).toBe(formatCivilDate(addDuration(day(due), "P1Y")));
  expect(dueOf(rule, before)).toBe(due);
});
