import { describe, expect, test } from "vitest";
import { ruleProblems } from "./rule-problems.ts";
import type { RuleOf } from "./rule-schema.ts";

type Rule = RuleOf<"recurrence">;
const series = (rrule: string, more: Partial<Rule> = {}): Rule => ({
  kind: "recurrence",
  rrule,
  start: "2026-01-05",
  ...more,
});
const told = (rule: Rule) =>
  ruleProblems(rule).map(({ pointer, code, params }) => ({ pointer, code, params }));

describe("a recurrence that cannot be", () => {
  test("gives times of a day: the part and its place are named", () => {
    expect(told(series("FREQ=HOURLY"))).toEqual([
      {
        pointer: "/rrule",
        code: "rrule-sub-daily",
        params: { part: "FREQ", value: "HOURLY", start: 5, end: 11 },
      },
    ]);
    expect(told(series("FREQ=DAILY;BYHOUR=9"))).toMatchObject([
      { pointer: "/rrule", code: "rrule-sub-daily", params: { part: "BYHOUR", start: 11 } },
    ]);
  });

  test("is told with every problem it has, the day it begins on too", () => {
    expect(
      told(series("FREQ=WEEKLY;COUNT=0;BYDAI=MO", { start: "2026-02-30" })).map(
        ({ pointer, code }) => `${pointer} ${code}`,
      ),
    ).toEqual(["/rrule rrule-unknown-part", "/rrule rrule-out-of-range", "/start no-such-date"]);
  });

  test.each([
    ["FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30", "never-again"],
    ["FREQ=DAILY;BYMONTH=4;BYMONTHDAY=31", "never-again"],
    ["FREQ=DAILY;UNTIL=20251231", "until-passed"],
  ])("gives no day: %s, %s", (rrule, reason) => {
    expect(told(series(rrule))).toEqual([
      { pointer: "/rrule", code: "rrule-gives-no-day", params: { reason } },
    ]);
  });

  test.each<[string, Partial<Rule>, string, string, string]>([
    ["FREQ=WEEKLY", { early: "P8D" }, "/early", "P8D", "P7D"],
    ["FREQ=WEEKLY", { late: "P8D" }, "/late", "P8D", "P7D"],
    ["FREQ=WEEKLY", { early: "P4D", late: "P4D" }, "/late", "P8D", "P7D"],
    ["FREQ=MONTHLY;BYMONTHDAY=1", { early: "P30D" }, "/early", "P30D", "P28D"],
    // Monday and Thursday: from Monday it is three days only.
    ["FREQ=WEEKLY;BYDAY=MO,TH", { early: "P4D" }, "/early", "P4D", "P3D"],
  ])("%s with %j: windows overlap", (rrule, more, pointer, margin, gap) => {
    expect(told(series(rrule, more))).toEqual([
      { pointer, code: "margin-longer-than-gap", params: { margin, gap } },
    ]);
  });

  test("comes round more seldom than the law allows", () => {
    expect(told(series("FREQ=YEARLY", { neverAfter: "P6M" }))).toEqual([
      {
        pointer: "/neverAfter",
        code: "longest-shorter-than-interval",
        params: { limit: "P6M", every: "P365D" },
      },
    ]);
  });
});

test.each<Rule>([
  series("FREQ=WEEKLY", { early: "P7D", neverAfter: "P1W" }),
  series("FREQ=WEEKLY;BYDAY=MO,TH", { early: "P1D", late: "P2D", neverAfter: "P3D" }),
  series("FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29", { early: "P1M", late: "P1Y" }),
  series("FREQ=DAILY;COUNT=1", { early: "P1Y", late: "P1Y", neverAfter: "P1D" }),
  series("RSCALE=GREGORIAN;SKIP=BACKWARD;FREQ=MONTHLY;BYMONTHDAY=31"),
])("nothing against %j", (rule) => {
  expect(told(rule)).toEqual([]);
});

test.each(["FREQ=DAILY", "FREQ=DAILY;INTERVAL=100000;BYMONTH=2;BYMONTHDAY=29"])(
  "%s: a rule with no end in reach is looked through all the same",
  (rrule) => {
    expect(told(series(rrule, { start: "2024-02-29", early: "P1D" }))).toEqual([]);
  },
);
