import { describe, expect, test } from "vitest";
import { datesOf, day, dueOf, windowOf } from "../../testing/due-records.ts";
import type { RuleOf } from "../rule-schema.ts";

type Rule = RuleOf<"anniversary">;
const rule = (every: string, within: string, more: Partial<Rule> = {}): Rule => ({
  kind: "anniversary",
  every,
  within,
  afterLate: "restart",
  ...more,
});

// The Gas Safety (Installation and Use) Regulations 1998, reg. 36A (2018): a check in the two months
// that end with the deadline keeps it. The first check here sets the deadline of 10 February 2027.
describe("12 months, kept in the two months ending with the deadline of 10 February 2027", () => {
  const GAS = rule("P12M", "P2M");
  test.each([
    ["inside the window", "2027-01-05", "2028-02-10"],
    ["on its first day", "2026-12-11", "2028-02-10"],
    ["on the deadline", "2027-02-10", "2028-02-10"],
    ["a day before the window: counts anew", "2026-12-10", "2027-12-10"],
    ["late: counts anew", "2027-03-01", "2028-03-01"],
  ])("%s", (_, done, due) => {
    expect(datesOf(GAS, "2026-02-10")).toEqual(["2026-12-11", "2027-02-10", "2027-02-10"]);
    expect(dueOf(GAS, "2026-02-10", done)).toBe(due);
  });
});

// The Motor Vehicles (Tests) Regulations 1981, as published guidance puts it: "up to a month (minus
// a day) before it runs out" keeps the renewal date; the example there is 15 May and 16 April.
test("a month less a day before 15 May is 16 April, as a vehicle's yearly test counts", () => {
  const yearly = rule("P1Y", "P1M");
  expect(datesOf(yearly, "2025-05-15")[0]).toBe("2026-04-16");
  expect(dueOf(yearly, "2025-05-15", "2026-04-16")).toBe("2027-05-15");
  expect(dueOf(yearly, "2025-05-15", "2026-04-15")).toBe("2027-04-15");
});

// Worked by hand from the calendar.
describe("dates are counted from the anchor", () => {
  test("31 January monthly: 28 February, then 31 March", () => {
    const monthly = rule("P1M", "P1W");
    const dates = ["2026-01-31"];
    for (let turn = 0; turn < 5; turn += 1) dates.push(dueOf(monthly, ...dates));
    expect(dates.slice(1)).toEqual([
      "2026-02-28",
      "2026-03-31",
      "2026-04-30",
      "2026-05-31",
      "2026-06-30",
    ]);
  });

  test("29 February and 12 months: 28 February, and after four years the 29th again", () => {
    const yearly = rule("P12M", "P1M");
    const dates = ["2024-02-29"];
    for (let turn = 0; turn < 4; turn += 1) dates.push(dueOf(yearly, ...dates));
    expect(dates.slice(1)).toEqual(["2025-02-28", "2026-02-28", "2027-02-28", "2028-02-29"]);
  });
});

describe("done late", () => {
  const KEEP = rule("P12M", "P1M", { late: "P1M", afterLate: "keep" });
  test("keeps the anniversary where the interval says so", () => {
    expect(dueOf(KEEP, "2025-06-01", "2026-06-20")).toBe("2027-06-01");
  });

  test("years late, the next anniversary after it was done is due", () => {
    expect(dueOf(KEEP, "2020-06-01", "2026-05-31")).toBe("2026-06-01");
    expect(dueOf(KEEP, "2020-06-01", "2026-06-01")).toBe("2027-06-01");
  });

  test("a margin after the deadline is late but not overdue, and an older count is not changed", () => {
    expect(datesOf(KEEP, "2025-06-01")).toEqual(["2026-05-02", "2026-06-01", "2026-07-01"]);
  });

  test("at the end of the calendar it ends", () => {
    expect(dueOf(KEEP, "0001-01-31", "9999-12-31")).toBe("9999-12-31");
    expect(dueOf(rule("P0D", "P1D", { afterLate: "keep" }), "2020-01-01", "2026-01-01")).toBe(
      "2020-01-01",
    );
  });
});

test("the date says which day it was kept for, and why it began anew", () => {
  const yearly = rule("P12M", "P2M");
  expect(windowOf(yearly, "2026-02-10").why.code).toBe("from-last-done");
  expect(windowOf(yearly, "2026-02-10", "2027-01-05").why).toEqual({
    code: "anniversary-kept",
    params: {
      every: "P12M",
      deadline: "2027-02-10",
      anchor: "2026-02-10",
      date: "2027-01-05",
      entry: `entry of ${day("2027-01-05")}`,
    },
  });
  expect(windowOf(yearly, "2026-02-10", "2026-12-10").why).toMatchObject({
    code: "anniversary-restarted-early",
    params: { opens: "2026-12-11", date: "2026-12-10" },
  });
  expect(windowOf(yearly, "2026-02-10", "2027-03-01").why.code).toBe("anniversary-restarted-late");
});
