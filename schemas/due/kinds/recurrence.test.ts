import { describe, expect, test } from "vitest";
import { BUSINESS_DAYS } from "../../testing/bank-holidays.ts";
import { datesOf, day, doneOn, dueOf, windowOf } from "../../testing/due-records.ts";
import { calendarOf } from "../calendar.ts";
import { formatCivilDate } from "../civil.ts";
import { computeWindow, statusOn } from "../compute-window.ts";
import { forecast } from "../forecast.ts";
import type { RuleOf } from "../rule-schema.ts";
import { hasDates } from "../window.ts";

type Rule = RuleOf<"recurrence">;
const series = (rrule: string, more: Partial<Rule> = {}): Rule => ({
  kind: "recurrence",
  rrule,
  start: "2026-01-05",
  ...more,
});
const MONDAYS = series("FREQ=WEEKLY", { early: "P3D", late: "P2D" });

// 5 January 2026 is a Monday; the dates are worked by hand.
describe("a recurrence", () => {
  test("never done is due on its first date from the registration on", () => {
    const due = (registered: string) =>
      formatCivilDate(computeWindow(MONDAYS, { done: [], registered: day(registered) }).due);
    expect(due("2025-06-01")).toBe("2026-01-05");
    expect(due("2026-01-05")).toBe("2026-01-05");
    expect(due("2026-01-06")).toBe("2026-01-12");
  });

  test("has its margins about each date", () => {
    expect(datesOf(MONDAYS, "2026-01-05")).toEqual(["2026-01-09", "2026-01-12", "2026-01-14"]);
  });

  test.each([
    ["the day before the window opens: that date stands", "2026-01-08", "2026-01-12"],
    ["the first day of the window: it is done", "2026-01-09", "2026-01-19"],
    ["on its day", "2026-01-12", "2026-01-19"],
    ["late: the one missed is not made up for", "2026-01-14", "2026-01-19"],
    ["weeks late: the next is as it was", "2026-02-11", "2026-02-16"],
  ])("done %s", (_title, done, due) => {
    expect(dueOf(MONDAYS, "2026-01-05", done)).toBe(due);
  });

  test("one visit never counts for two dates, however wide the window", () => {
    const wide = { ...MONDAYS, early: "P7D" };
    expect(dueOf(wide, "2026-01-12")).toBe("2026-01-19");
    expect(dueOf(wide, "2026-01-13")).toBe("2026-01-26");
    expect(dueOf({ ...MONDAYS, early: "P3W" }, "2026-01-13")).toBe("2026-01-26");
  });

  test.each([
    ["FREQ=WEEKLY;COUNT=2", "count-reached"],
    ["FREQ=WEEKLY;UNTIL=20260112", "until-passed"],
  ])("%s: when it is over nothing is due any more, and the reason is told", (rrule, reason) => {
    expect(dueOf(series(rrule), "2026-01-05")).toBe("2026-01-12");
    const over = windowOf(series(rrule), "2026-01-12");
    expect(hasDates(over)).toBe(false);
    expect(over.why).toMatchObject({ code: "recurrence-over", params: { reason } });
    expect(statusOn(over, day("2030-01-01"))).toBe("not-yet");
  });

  test("over, it is due all the same when the longest time the law allows is", () => {
    const rule = series("FREQ=WEEKLY;COUNT=1", { neverAfter: "P1Y" });
    expect(dueOf(rule, "2026-01-05")).toBe("2027-01-05");
  });

  test("missed before it was over it stays overdue", () => {
    const window = windowOf(series("FREQ=WEEKLY;COUNT=2"), "2026-01-05");
    expect(statusOn(window, day("2027-01-01"))).toBe("overdue");
  });
});

describe("a recurrence on days off", () => {
  const dates = (rule: Rule, done: string, count: number, calendar = BUSINESS_DAYS) =>
    forecast(
      rule,
      { done: [doneOn(done)], registered: day("2026-01-01"), calendar },
      { from: day(done), count },
    ).map(({ window }) => formatCivilDate(window.due));

  // 1 February, 1 March and 1 November 2026 are Sundays, 1 August is a Saturday.
  test("is done on the day it rolls back to, though it has no early margin", () => {
    expect(dates(series("FREQ=MONTHLY;BYMONTHDAY=1"), "2026-01-05", 4)).toEqual([
      "2026-01-30",
      "2026-02-27",
      "2026-04-01",
      "2026-05-01",
    ]);
  });

  test("every day: Friday stands for the weekend, and Maundy Thursday for Easter", () => {
    expect(dates(series("FREQ=DAILY"), "2026-03-31", 4)).toEqual([
      "2026-04-01",
      "2026-04-02",
      "2026-04-07",
      "2026-04-08",
    ]);
  });

  test("put off to the next open day it does not move the next one", () => {
    const forward = series("FREQ=WEEKLY;BYDAY=MO", { onDayOff: "roll-forward" });
    expect(dates(forward, "2026-03-30", 3)).toEqual(["2026-04-07", "2026-04-13", "2026-04-20"]);
  });

  test("in a closure all its dates roll back to the last open day", () => {
    const summer = calendarOf({
      closures: [{ from: "2026-07-20", to: "2026-08-30", reason: "summer" }],
    });
    expect(dates(series("FREQ=WEEKLY"), "2026-07-06", 3, summer)).toEqual([
      "2026-07-13",
      "2026-07-19",
      "2026-08-31",
    ]);
  });

  test("where it never opens again it stays due on its day", () => {
    const shut = calendarOf({ seasons: [{ from: "01-01", to: "12-31", reason: "shut" }] });
    expect(dates(series("FREQ=WEEKLY"), "2026-07-06", 2, shut)).toEqual([
      "2026-07-13",
      "2026-07-20",
    ]);
  });
});
