import { describe, expect, test } from "vitest";
import { EVERY_KIND } from "../testing/every-kind.ts";
import { ruleProblems } from "./rule-problems.ts";
import type { IntervalRule, RuleOf } from "./rule-schema.ts";

const found = (rule: IntervalRule) =>
  ruleProblems(rule).map(({ pointer, code }) => `${pointer} ${code}`);
const spacing = (min: string, max: string, every?: string): IntervalRule => ({
  kind: "spacing",
  min,
  max,
  ...(every === undefined ? {} : { every }),
});
const yearly = { kind: "anniversary", every: "P1Y", within: "P2M", afterLate: "keep" } as const;
const usage = { kind: "on-usage", point: "odometer", every: 500, unit: "h" } as const;
const event: RuleOf<"on-event"> = { kind: "on-event", after: ["repaired"], within: "P0D" };

describe("impossible", () => {
  test.each<[IntervalRule, string]>([
    [{ kind: "from-last-done", every: "P0M" }, "/every duration-of-nothing"],
    [{ ...yearly, every: "P0D" }, "/every duration-of-nothing"],
    [{ ...yearly, within: "P0D" }, "/within duration-of-nothing"],
    [spacing("P0D", "P40D"), "/min duration-of-nothing"],
    [{ ...usage, orAfter: "P0M" }, "/orAfter duration-of-nothing"],
    [{ kind: "each-period", period: "week", neverAfter: "P0D" }, "/neverAfter duration-of-nothing"],
    [{ kind: "by-result", score: "score", neverAfter: "P0D" }, "/neverAfter duration-of-nothing"],
    [{ ...event, neverAfter: "P0D" }, "/neverAfter duration-of-nothing"],
    [{ kind: "from-last-done", every: "P1M", early: "P31D" }, "/early window-longer-than-interval"],
    [{ kind: "from-last-done", every: "P1M", late: "P2M" }, "/late window-longer-than-interval"],
    [
      { kind: "from-last-done", every: "P1M", early: "P20D", late: "P20D" },
      "/late window-longer-than-interval",
    ],
    [{ ...yearly, every: "P1M", within: "P5W" }, "/within window-longer-than-interval"],
    [{ ...yearly, anchor: "2026-02-30" }, "/anchor no-such-date"],
    [spacing("P41D", "P40D"), "/max spacing-out-of-order"],
    [spacing("P20D", "P40D", "P1D"), "/every spacing-out-of-order"],
    [spacing("P20D", "P40D", "P2M"), "/every spacing-out-of-order"],
    [{ kind: "each-period", period: "week", day: 8 }, "/day period-has-no-such-day"],
    [{ kind: "each-period", period: "month", day: 32 }, "/day period-has-no-such-day"],
    [{ kind: "each-period", period: "quarter", day: 93 }, "/day period-has-no-such-day"],
    [{ kind: "each-period", period: "half-year", day: 185 }, "/day period-has-no-such-day"],
  ])("%j", (rule, problem) => {
    expect(found(rule)).toEqual([problem]);
  });

  test.each<IntervalRule>([
    { kind: "from-last-done", every: "P12M", neverAfter: "P11M" },
    { ...yearly, neverAfter: "P11M" },
    { kind: "each-period", period: "month", neverAfter: "P4W" },
    { ...spacing("P9M", "P15M"), neverAfter: "P8M" },
    { ...spacing("P9M", "P15M", "P12M"), neverAfter: "P10M" },
    { ...event, within: "P14D", neverAfter: "P1W" },
    { ...usage, orAfter: "P2Y", neverAfter: "P1Y" },
  ])("due only after the longest time that may pass: %j", (rule) => {
    expect(found(rule)).toEqual(["/neverAfter longest-shorter-than-interval"]);
  });

  test("a margin or longest time that no band of the result has", () => {
    const context = { checklist: { id: "condition", document: EVERY_KIND } };
    const told = (rule: IntervalRule) =>
      ruleProblems(rule, context).map(({ pointer, params }) => [pointer, params]);
    const byResult = { kind: "by-result", score: "condition" } as const;
    expect(told({ ...byResult, early: "P1M", neverAfter: "P4Y" })).toEqual([]);
    expect(told({ ...byResult, late: "P4Y" })).toEqual([
      ["/late", { margin: "P4Y", every: "P3Y" }],
    ]);
    expect(told({ ...byResult, neverAfter: "P2Y" })).toEqual([
      ["/neverAfter", { limit: "P2Y", every: "P3Y" }],
    ]);
  });
});

test.each<IntervalRule>([
  { kind: "from-last-done", every: "P3M", early: "P10D", late: "P10D", neverAfter: "P4M" },
  { kind: "from-last-done", every: "P1Y", first: "P3Y", neverAfter: "P1Y" },
  { kind: "from-last-done", every: "P1Y", first: "P0D" },
  { kind: "by-result", score: "score", early: "P1M" },
  { kind: "anniversary", every: "P12M", within: "P12M", afterLate: "restart" },
  { ...yearly, anchor: "2024-02-29" },
  { kind: "each-period", period: "quarter", day: 10 },
  { kind: "each-period", period: "year", day: 366 },
  spacing("P9M", "P15M", "P12M"),
  spacing("P30D", "P30D"),
  event,
  { ...event, after: ["reopened"], early: "P2W", blocks: true, neverAfter: "P1Y" },
  { ...usage, orAfter: "P1Y" },
])("nothing against %j", (rule) => {
  expect(found(rule)).toEqual([]);
});
