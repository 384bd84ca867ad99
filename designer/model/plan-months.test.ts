import { expect, test } from "vitest";
import { hoursOf, monthsOf } from "./plan-months.ts";

const week = (monday: string, checks = 1) => ({ week: monday, checks, minutes: checks * 5 });

test("a week belongs to the month of its Monday", () => {
  const months = monthsOf([week("2026-10-26", 2), week("2026-11-02", 3), week("2026-11-30", 4)]);
  expect(
    months.map(({ month, checks, weeks }) => [month, checks, weeks.map(({ day }) => day)]),
  ).toEqual([
    [10, 2, [26]],
    [11, 7, [2, 30]],
  ]);
});

test("the same month of another year is another", () => {
  expect(monthsOf([week("2026-10-26"), week("2027-10-04")])).toHaveLength(2);
});

test("minutes are written as hours and minutes", () => {
  expect(hoursOf(425)).toEqual({ hours: 7, minutes: "05" });
  expect(hoursOf(59.7)).toEqual({ hours: 1, minutes: "00" });
});
