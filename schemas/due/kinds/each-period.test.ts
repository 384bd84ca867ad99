import { describe, expect, test } from "vitest";
import { datesOf, day, windowOf } from "../../testing/due-records.ts";
import { statusOn } from "../compute-window.ts";
import type { Period } from "./each-period.ts";

const once = (period: Period, done: string, at?: number) =>
  datesOf({ kind: "each-period", period, ...(at === undefined ? {} : { day: at }) }, done);

// A US hospital accreditor's published time frames: weekly is once per calendar week, monthly once
// per calendar month. Weeks begin on Monday (ISO 8601); the dates are worked by hand.
describe("once in each period, on any day of it", () => {
  test.each<[Period, string, string, string]>([
    ["week", "2026-12-28", "2027-01-04", "2027-01-10"],
    ["week", "2027-01-03", "2027-01-04", "2027-01-10"],
    ["month", "2026-01-01", "2026-02-01", "2026-02-28"],
    ["month", "2026-01-31", "2026-02-01", "2026-02-28"],
    ["month", "2028-01-15", "2028-02-01", "2028-02-29"],
    ["month", "2026-12-31", "2027-01-01", "2027-01-31"],
    ["quarter", "2026-01-01", "2026-04-01", "2026-06-30"],
    ["quarter", "2026-11-30", "2027-01-01", "2027-03-31"],
    ["half-year", "2026-06-30", "2026-07-01", "2026-12-31"],
    ["half-year", "2026-07-01", "2027-01-01", "2027-06-30"],
    ["year", "2026-01-01", "2027-01-01", "2027-12-31"],
  ])("each %s: done %s, the next is from %s to %s", (period, done, first, last) => {
    expect(once(period, done)).toEqual([first, last, last]);
  });
});

test("1 January and 28 February both count for their month, though 58 days lie between", () => {
  const window = windowOf({ kind: "each-period", period: "month" }, "2026-01-01");
  expect(statusOn(window, day("2026-01-31"))).toBe("not-yet");
  expect(statusOn(window, day("2026-02-01"))).toBe("early");
  expect(statusOn(window, day("2026-02-28"))).toBe("due");
  expect(statusOn(window, day("2026-03-01"))).toBe("overdue");
});

test("due on a day of the period: after it late, and overdue when the period is over", () => {
  expect(once("month", "2026-01-20", 10)).toEqual(["2026-02-01", "2026-02-10", "2026-02-28"]);
  expect(once("month", "2026-01-20", 31)[1]).toBe("2026-02-28");
});

test("a period that was missed is not made up for by the next", () => {
  expect(datesOf({ kind: "each-period", period: "month" }, "2026-01-20", "2026-03-02")[0]).toBe(
    "2026-04-01",
  );
});
