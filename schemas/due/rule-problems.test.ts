import { expect, test } from "vitest";
import { ruleProblems } from "./rule-problems.ts";
import type { IntervalRule } from "./rule-schema.ts";

const found = (rule: IntervalRule) =>
  ruleProblems(rule).map(({ pointer, code }) => `${pointer} ${code}`);
const spacing = (min: string, max: string, every?: string): IntervalRule => ({
  kind: "spacing",
  min,
  max,
  ...(every === undefined ? {} : { every }),
});

test.each<[IntervalRule, string]>([
  [{ kind: "from-last-done", every: "P0M" }, "/every duration-of-nothing"],
  [
    { kind: "anniversary", every: "P1Y", within: "P0D", afterLate: "keep" },
    "/within duration-of-nothing",
  ],
  [{ kind: "each-period", period: "week", neverAfter: "P0D" }, "/neverAfter duration-of-nothing"],
  [{ kind: "from-last-done", every: "P1M", early: "P31D" }, "/early window-longer-than-interval"],
  [{ kind: "from-last-done", every: "P1M", late: "P2M" }, "/late window-longer-than-interval"],
  [
    { kind: "anniversary", every: "P1M", within: "P5W", afterLate: "keep" },
    "/within window-longer-than-interval",
  ],
  [spacing("P41D", "P40D"), "/max spacing-out-of-order"],
  [spacing("P20D", "P40D", "P1D"), "/every spacing-out-of-order"],
  [spacing("P20D", "P40D", "P2M"), "/every spacing-out-of-order"],
  [
    { kind: "from-last-done", every: "P12M", neverAfter: "P11M" },
    "/neverAfter longest-shorter-than-interval",
  ],
])("impossible: %j", (rule, problem) => {
  expect(found(rule)).toEqual([problem]);
});

test.each<IntervalRule>([
  { kind: "from-last-done", every: "P3M", early: "P10D", late: "P10D", neverAfter: "P4M" },
  { kind: "by-result", score: "score", early: "P1M" },
  { kind: "anniversary", every: "P12M", within: "P12M", afterLate: "restart" },
  { kind: "each-period", period: "quarter", day: 10 },
  spacing("P9M", "P15M", "P12M"),
  spacing("P30D", "P30D"),
])("nothing against %j", (rule) => {
  expect(found(rule)).toEqual([]);
});
