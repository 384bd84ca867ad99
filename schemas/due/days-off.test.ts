import { describe, expect, test } from "vitest";
import { BUSINESS_DAYS, WEEKEND } from "../testing/bank-holidays.ts";
import { day, doneOn, REGISTERED } from "../testing/due-records.ts";
import { calendarOf } from "./calendar.ts";
import { formatCivilDate } from "./civil.ts";
import { computeWindow, statusOn } from "./compute-window.ts";
import type { IntervalRule, OnDayOff, WhenClosed } from "./rule-schema.ts";

const SCHOOL = calendarOf({
  weekdays: WEEKEND,
  closures: [{ from: "2026-07-23", to: "2026-09-01", reason: "summer holidays" }],
});
const windowOf = (rule: IntervalRule, done: string, calendar = SCHOOL) =>
  computeWindow(rule, { done: [doneOn(done)], registered: REGISTERED, calendar });
const datesOf = (rule: IntervalRule, done: string, calendar = SCHOOL) => {
  const { due, latest } = windowOf(rule, done, calendar);
  return [due, latest].map(formatCivilDate);
};
const monthly = (
  onDayOff?: OnDayOff,
  whenClosed?: WhenClosed,
  more: Partial<IntervalRule> = {},
): IntervalRule =>
  ({
    kind: "from-last-done",
    every: "P1M",
    ...(onDayOff === undefined ? {} : { onDayOff }),
    ...(whenClosed === undefined ? {} : { whenClosed }),
    ...more,
  }) as IntervalRule;

describe("weekdays off and closures are asked apart", () => {
  // 28 March 2026 is a Saturday, 25 July one in the holidays.
  test.each<[OnDayOff, WhenClosed, string, string]>([
    ["roll-back", "excused", "2026-03-27", "2026-09-02"],
    ["roll-forward", "roll-back", "2026-03-30", "2026-07-22"],
    ["due-anyway", "on-reopening", "2026-03-28", "2026-09-02"],
    ["roll-forward", "due-anyway", "2026-03-30", "2026-07-25"],
  ])("%s on days off and %s when closed", (onDayOff, whenClosed, off, closed) => {
    const rule = monthly(onDayOff, whenClosed);
    expect(datesOf(rule, "2026-02-28")[0]).toBe(off);
    expect(datesOf(rule, "2026-06-25")[0]).toBe(closed);
  });

  test("a day off is never excused and never blocks use", () => {
    const window = windowOf(monthly("roll-forward", "excused"), "2026-02-28");
    expect(window.closure).toBeUndefined();
    expect(window.why.moved?.[0]?.code).toBe("rolled-forward");
  });

  test("roll-forward out of a weekend leads past a closure that begins on the Monday", () => {
    const monday = calendarOf({
      weekdays: WEEKEND,
      closures: [{ from: "2026-03-30", to: "2026-04-03", reason: "stocktaking" }],
    });
    expect(datesOf(monthly("roll-forward"), "2026-02-28", monday)[0]).toBe("2026-04-06");
  });

  test("a late margin ends on an open day, unless it is due anyway", () => {
    // Due on Friday 17 April, four days' margin: Tuesday; two days': Sunday.
    expect(datesOf(monthly(undefined, undefined, { late: "P4D" }), "2026-03-17")[1]).toBe(
      "2026-04-21",
    );
    expect(datesOf(monthly(undefined, undefined, { late: "P2D" }), "2026-03-17")[1]).toBe(
      "2026-04-17",
    );
    expect(datesOf(monthly("due-anyway", undefined, { late: "P2D" }), "2026-03-17")[1]).toBe(
      "2026-04-19",
    );
  });
});

describe("never past the longest time the law allows", () => {
  test.each<[OnDayOff, WhenClosed]>([
    ["roll-forward", "roll-back"],
    ["roll-back", "on-reopening"],
    ["roll-back", "excused"],
  ])("%s, %s: what cannot wait rolls back", (onDayOff, whenClosed) => {
    const rule = monthly(onDayOff, whenClosed, { neverAfter: "P1M" });
    expect(datesOf(rule, "2026-02-28")).toEqual(["2026-03-27", "2026-03-27"]);
    expect(datesOf(rule, "2026-06-25")).toEqual(["2026-07-22", "2026-07-22"]);
    expect(windowOf(rule, "2026-06-25").closure).toBeUndefined();
  });

  test("and with a day to spare it waits for Monday only if Monday is allowed", () => {
    // Done on 28 February, due on Saturday 28 March: Monday is 30 days on.
    expect(
      datesOf(monthly("roll-forward", "roll-back", { neverAfter: "P30D" }), "2026-02-28")[0],
    ).toBe("2026-03-30");
    expect(
      datesOf(monthly("roll-forward", "roll-back", { neverAfter: "P29D" }), "2026-02-28")[0],
    ).toBe("2026-03-27");
  });
});

describe("a closure", () => {
  const excused = monthly(undefined, "excused", { late: "P7D" });

  test("that begins when it is overdue already excuses nothing", () => {
    const window = windowOf(excused, "2026-06-10");
    expect(formatCivilDate(window.due)).toBe("2026-07-10");
    expect(
      ["2026-07-17", "2026-07-18", "2026-08-01", "2026-09-02"].map((on) =>
        statusOn(window, day(on)),
      ),
    ).toEqual(["late-window", "overdue", "overdue", "overdue"]);
  });

  test("in the late margin ends the margin with the last open day", () => {
    const window = windowOf(excused, "2026-06-20");
    expect([window.due, window.latest].map(formatCivilDate)).toEqual(["2026-07-20", "2026-07-22"]);
    expect(statusOn(window, day("2026-07-23"))).toBe("overdue");
  });

  test("blocks from the day it was due, not before, and until done however late", () => {
    const window = windowOf(monthly(undefined, "on-reopening"), "2026-06-25");
    expect(
      ["2026-07-23", "2026-07-25", "2027-01-01"].map((on) => statusOn(window, day(on))),
    ).toEqual(["not-yet", "blocked", "blocked"]);
  });
});

// ISDA 2006 Definitions, section 4.12: "modified following" is the next open day unless it falls in
// another month, then the last one before. Once in each month, put off, gives just that.
test.each([
  ["2027-05-31", 31, "2027-05-28"],
  ["2026-11-01", 1, "2026-11-02"],
  ["2026-12-26", 26, "2026-12-29"],
])("once in each month, due %s and put off: due %s", (date, at, due) => {
  const rule: IntervalRule = {
    kind: "each-period",
    period: "month",
    day: at,
    onDayOff: "roll-forward",
  };
  const before = formatCivilDate((day(`${date.slice(0, 8)}01`) - 1) as ReturnType<typeof day>);
  expect(datesOf(rule, before, BUSINESS_DAYS)[0]).toBe(due);
});

test("put off a day off it never passes the greatest spacing", () => {
  const rule: IntervalRule = {
    kind: "spacing",
    min: "P20D",
    max: "P28D",
    onDayOff: "roll-forward",
  };
  // 28 days from Saturday are a Saturday.
  expect(datesOf(rule, "2026-02-28")).toEqual(["2026-03-27", "2026-03-27"]);
});
