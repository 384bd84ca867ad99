import { describe, expect, test } from "vitest";
import { interval } from "../testing/defined-interval.ts";
import { rule } from "../testing/rule.ts";
import { coverPlan, coversProblems, type DefinedInterval } from "./covering.ts";
import type { IntervalRule } from "./rule-schema.ts";

const every = (time: string): IntervalRule => ({ kind: "from-last-done", every: time });
const LOOK = { gauge: "block", pin: "block" } as const;
const SERVICE = { ...LOOK, weight: "own" } as const;

const monthly = interval("monthly", every("P1M"), LOOK);
const yearly = (covers: readonly string[] = ["monthly"], asked = every("P1Y")) =>
  interval("yearly", asked, SERVICE, { covers: [...covers] });
const told = (one: DefinedInterval, ...all: readonly DefinedInterval[]) =>
  coversProblems(one, all).map(({ pointer, code }) => `${pointer} ${code}`);

describe("a longer check covers a shorter one", () => {
  test("when it asks every point of it, by a block that both include", () => {
    expect(told(yearly(), monthly)).toEqual([]);
    const bare = interval(
      "yearly",
      every("P1Y"),
      { gauge: "block", pin: "own" },
      {
        covers: ["monthly"],
      },
    );
    expect(coversProblems(bare, [monthly])).toEqual([
      { pointer: "/covers/0", code: "covers-lacks-points", params: { points: ["pin"] } },
    ]);
  });

  test("or by one checklist that both use", () => {
    const checklist = "one checklist";
    const short = interval("monthly", every("P1M"), { gauge: "own" }, { checklist });
    const long = interval(
      "yearly",
      every("P1Y"),
      { gauge: "own" },
      {
        checklist,
        covers: ["monthly"],
      },
    );
    expect(told(long, short)).toEqual([]);
  });

  test("a name that an object inherits is no point", () => {
    const odd = interval("monthly", every("P1M"), { constructor: "block" as const });
    expect(told(yearly(), odd)).toEqual(["/covers/0 covers-lacks-points"]);
  });

  test.each<[string, IntervalRule, IntervalRule]>([
    ["the reverse", every("P1M"), every("P1Y")],
    ["an equal one", every("P1M"), { kind: "each-period", period: "month" }],
    ["one by result", { kind: "by-result", score: "score" }, every("P1M")],
    ["of one by result", every("P1Y"), { kind: "by-result", score: "score" }],
    ["one by use", { kind: "on-usage", point: "km", every: 9, unit: "km" }, every("P1M")],
    [
      "of one after an event",
      every("P1Y"),
      { kind: "on-event", after: ["repaired"], within: "P1D" },
    ],
    [
      "a series as often",
      { kind: "recurrence", rrule: "FREQ=DAILY;INTERVAL=30", start: "2026-01-01" },
      every("P1M"),
    ],
    [
      "one whose worst risk is as often",
      {
        kind: "by-risk",
        table: {
          policy: "unique",
          inputs: ["asset.use"],
          rules: [rule([0], "P1Y"), rule([1], "P1M")],
        },
        worse: { use: "up" },
      },
      every("P1M"),
    ],
  ])("never %s", (_, long, short) => {
    expect(told(yearly(["monthly"], long), interval("monthly", short, LOOK))).toEqual([
      "/covers/0 covers-not-longer",
    ]);
  });

  test("nor what is unknown, of another type, itself, or covers it in a circle", () => {
    expect(told(yearly(["weekly"]))).toEqual(["/covers/0 covers-unknown"]);
    const other = interval("monthly", every("P1M"), LOOK, { assetType: "ladder" });
    expect(told(yearly(), other)).toEqual(["/covers/0 covers-other-type"]);
    expect(told(yearly(["yearly"]))).toEqual(["/covers/0 covers-itself"]);
    const quarterly = interval("quarterly", every("P3M"), LOOK, { covers: ["monthly"] });
    const back = interval("monthly", every("P1M"), LOOK, { covers: ["yearly"] });
    expect(coversProblems(yearly(["quarterly"]), [quarterly, back])).toEqual([
      {
        pointer: "/covers/0",
        code: "covers-in-circle",
        params: { titles: ["yearly", "quarterly", "monthly", "yearly"] },
      },
    ]);
  });

  test("its own earlier definition does not count", () => {
    const before = interval("yearly", every("P1M"), {}, { covers: ["yearly"] });
    expect(told(yearly(), before, monthly)).toEqual([]);
  });
});

describe("a plan of covers", () => {
  const quarterly = interval("quarterly", every("P3M"), LOOK, { covers: ["monthly"] });
  const all = [monthly, yearly(["monthly", "quarterly"]), quarterly];

  test("has each shorter one after what covers it, whatever order they come in", () => {
    const plan = coverPlan(all);
    expect(plan.map((step) => [step.interval, step.by.map((one) => one.interval)])).toEqual([
      ["quarterly", ["yearly"]],
      ["monthly", ["quarterly", "yearly"]],
    ]);
    expect(coverPlan(all.toReversed())).toEqual(plan);
  });

  test("leaves out what has become impossible", () => {
    const lost = interval(
      "yearly",
      every("P1Y"),
      { gauge: "block" },
      {
        covers: ["monthly", "gone"],
      },
    );
    expect(coverPlan([monthly, lost])).toEqual([]);
  });
});
