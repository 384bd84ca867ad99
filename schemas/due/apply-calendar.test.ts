import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { BUSINESS_DAYS, WEEKEND } from "../testing/bank-holidays.ts";
import { day, doneOn, REGISTERED } from "../testing/due-records.ts";
import { type Calendar, calendarOf } from "./calendar.ts";
import { formatCivilDate } from "./civil.ts";
import { computeWindow, statusOn } from "./compute-window.ts";
import type { IntervalRule, WhenClosed } from "./rule-schema.ts";

fc.configureGlobal({ seed: 2032 });

const SUMMER = calendarOf({
  weekdays: WEEKEND,
  closures: [{ from: "2026-07-23", to: "2026-09-01", reason: "summer holidays" }],
});
const monthly = (whenClosed?: WhenClosed, more: Partial<IntervalRule> = {}): IntervalRule =>
  ({
    kind: "from-last-done",
    every: "P1M",
    late: "P7D",
    ...(whenClosed === undefined ? {} : { whenClosed }),
    ...more,
  }) as IntervalRule;
const windowOf = (rule: IntervalRule, done: string, calendar: Calendar = SUMMER) =>
  computeWindow(rule, { done: [doneOn(done)], registered: REGISTERED, calendar });
const datesOf = (rule: IntervalRule, done: string, calendar?: Calendar) => {
  const { due, latest } = windowOf(rule, done, calendar);
  return [due, latest].map(formatCivilDate);
};

describe("a date on a closed day", () => {
  test("rolls back to the last open day, and says from which and why", () => {
    const window = windowOf(
      { kind: "from-last-done", every: "P12M" },
      "2026-03-14",
      calendarOf({ weekdays: WEEKEND }),
    );
    expect(formatCivilDate(window.due)).toBe("2027-03-12");
    expect(window.why.moved).toEqual([
      {
        code: "rolled-back",
        params: { date: "2027-03-12", closed: "2027-03-14", reason: "Sunday" },
      },
    ]);
  });

  test.each<[WhenClosed, string, string]>([
    ["roll-back", "2026-07-22", "2026-07-22"],
    ["bring-forward", "2026-07-22", "2026-07-22"],
    ["due-anyway", "2026-07-25", "2026-08-01"],
    ["on-reopening", "2026-09-02", "2026-09-02"],
    ["excused", "2026-09-02", "2026-09-02"],
  ])("due 25 July in the summer holidays, %s: %s, at the latest %s", (policy, due, latest) => {
    expect(datesOf(monthly(policy), "2026-06-25")).toEqual([due, latest]);
  });

  test("rolled back it keeps its late margin; brought forward it has none", () => {
    expect(datesOf(monthly("roll-back"), "2026-03-14", BUSINESS_DAYS)).toEqual([
      "2026-04-14",
      "2026-04-21",
    ]);
    expect(datesOf(monthly("roll-back"), "2026-04-25", BUSINESS_DAYS)).toEqual([
      "2026-05-22",
      "2026-06-01",
    ]);
    const shut = calendarOf({
      closures: [{ from: "2026-05-23", to: "2026-05-25", reason: "shut" }],
    });
    expect(datesOf(monthly("bring-forward"), "2026-04-25", shut)).toEqual([
      "2026-05-22",
      "2026-05-22",
    ]);
  });

  test("rolls back unless told otherwise, and only where there is a calendar", () => {
    expect(datesOf(monthly(), "2026-06-25")).toEqual(datesOf(monthly("roll-back"), "2026-06-25"));
    const { due } = computeWindow(monthly(), {
      done: [doneOn("2026-06-25")],
      registered: REGISTERED,
    });
    expect(formatCivilDate(due)).toBe("2026-07-25");
  });

  test("stays due where no open day before it would count", () => {
    const august = windowOf({ kind: "each-period", period: "month" }, "2026-07-10");
    expect(formatCivilDate(august.due)).toBe("2026-08-31");
    expect(august.why.moved?.[0]?.code).toBe("no-open-day");
    expect(statusOn(august, day("2026-09-01"))).toBe("overdue");
  });

  test("on reopening or excused it never waits past the longest time the law allows", () => {
    for (const policy of ["on-reopening", "excused"] as const) {
      const window = windowOf(monthly(policy, { neverAfter: "P2M" }), "2026-06-25");
      expect(formatCivilDate(window.due)).toBe("2026-07-22");
      expect(window.closure).toBeUndefined();
    }
  });
});

describe("while closed", () => {
  test("what is excused is not expected, and is due when it reopens", () => {
    const window = windowOf(monthly("excused"), "2026-06-25");
    expect(
      ["2026-07-24", "2026-07-25", "2026-09-01", "2026-09-02", "2026-09-03"].map((on) =>
        statusOn(window, day(on)),
      ),
    ).toEqual(["not-yet", "excused", "excused", "due", "overdue"]);
  });

  test("excused is never done: the last time stays the last time", () => {
    expect(windowOf(monthly("excused"), "2026-06-25").lastDone).toBe(day("2026-06-25"));
  });

  test("a check on reopening blocks use from the day it was due until it is done", () => {
    const window = windowOf(monthly("on-reopening"), "2026-06-25");
    expect(
      ["2026-07-24", "2026-07-25", "2026-09-02", "2026-09-03"].map((on) =>
        statusOn(window, day(on)),
      ),
    ).toEqual(["not-yet", "blocked", "blocked", "blocked"]);
    const done = computeWindow(monthly("on-reopening"), {
      done: [doneOn("2026-06-25"), doneOn("2026-09-02")],
      registered: REGISTERED,
      calendar: SUMMER,
    });
    expect(statusOn(done, day("2026-09-02"))).toBe("not-yet");
  });
});

test("no calendar leads a date past the longest time, out of order, or to before it was done", () => {
  const policies: WhenClosed[] = [
    "roll-back",
    "bring-forward",
    "due-anyway",
    "on-reopening",
    "excused",
  ];
  fc.assert(
    fc.property(
      fc.constantFrom(...policies),
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 0, max: 400 }),
      fc.integer({ min: 1, max: 30 }),
      (policy, every, ago, more) => {
        const done = formatCivilDate((day("2026-09-20") - ago) as ReturnType<typeof day>);
        const rule = monthly(policy, { every: `P${every}D`, neverAfter: `P${every + more}D` });
        const { earliest, due, latest } = windowOf(rule, done);
        expect(latest).toBeLessThanOrEqual(day(done) + every + more);
        expect(due).toBeLessThanOrEqual(latest);
        expect(earliest).toBeLessThanOrEqual(due);
        expect(earliest).toBeGreaterThanOrEqual(day(done));
      },
    ),
  );
});
