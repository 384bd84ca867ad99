import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { memory, practice, published, type Sheet } from "../testing/starters/starter-case.ts";
import { WATER_OUTLET } from "./water-outlet.ts";

const cel = (value: number, elapsed?: number) => ({
  value,
  unit: "Cel",
  ...(elapsed === undefined ? {} : { elapsed }),
});
const fahrenheit = (value: number, elapsed: number) => ({ value, unit: "[degF]", elapsed });

const OUTLET = {
  hot: true,
  cold: true,
  sentinel: true,
  health_care: false,
  hot_within: "1 minute",
  spray: true,
} as const;
const LOOK = { used: "ok", clean: "ok", head: "ok" } as const;
const COLD = { mains: cel(14), cold_two_minutes: cel(15, 125) };
const SHEETS: Readonly<Record<string, Sheet>> = {
  sentinel: {
    particulars: OUTLET,
    answers: { ...LOOK, ...COLD, hot_minute: cel(56, 60) },
  },
  "health care": {
    particulars: { ...OUTLET, health_care: true },
    answers: { ...LOOK, ...COLD, hot_minute: cel(56, 60) },
  },
  "in thirty seconds": {
    particulars: { ...OUTLET, sentinel: false, hot_within: "30 seconds" },
    answers: { ...LOOK, cold_two_minutes: cel(15, 125), hot_half_minute: cel(56, 30) },
  },
};

proveStarter({
  starter: WATER_OUTLET,
  sheets: SHEETS,
  steps: [
    ...["used", "clean", "head"].map((point) => ({
      sheet: "sentinel",
      point,
      tries: [["not-ok", "fail"] as const],
    })),
    {
      sheet: "sentinel",
      point: "hot_minute",
      tries: [
        [cel(50.1, 60), "pass"],
        [cel(50, 60), "pass"],
        [cel(49.9, 60), "fail"],
        [fahrenheit(122, 60), "pass"],
        [fahrenheit(121.9, 60), "fail"],
        [cel(50, 45), "pass"],
        [cel(50, 44), "undecided"],
        [cel(50, 61), "undecided"],
        [cel(50), "undecided"],
      ],
    },
    {
      sheet: "health care",
      point: "hot_minute",
      tries: [
        [cel(55, 60), "pass"],
        [cel(54.9, 60), "fail"],
        [fahrenheit(131, 60), "pass"],
      ],
    },
    {
      sheet: "in thirty seconds",
      point: "hot_half_minute",
      tries: [
        [cel(50.1, 30), "pass"],
        [cel(50, 30), "pass"],
        [cel(49.9, 30), "fail"],
        [cel(50, 31), "undecided"],
        [cel(50, 19), "undecided"],
      ],
    },
    {
      sheet: "sentinel",
      point: "mains",
      tries: [
        [cel(19.9), "pass"],
        [cel(20), "advisory"],
        [cel(20.1), "advisory"],
      ],
    },
    {
      sheet: "sentinel",
      point: "cold_two_minutes",
      tries: [
        [cel(16, 120), "pass"],
        [cel(16.1, 120), "advisory"],
        [cel(15, 119), "undecided"],
        [cel(15, 181), "undecided"],
      ],
    },
    {
      sheet: "in thirty seconds",
      point: "cold_two_minutes",
      tries: [
        [cel(19.9, 120), "pass"],
        [cel(20, 120), "fail"],
        [cel(20.1, 120), "fail"],
        [fahrenheit(68, 120), "fail"],
        [fahrenheit(67.9, 120), "pass"],
      ],
    },
  ],
  numbers: {
    "/values/hot_general/const": published("wa-001", 50, "Cel"),
    "/values/hot_health_care/const": memory("HSG274 part 2"),
    "/values/rise/const": practice("a common rule for cold outlets"),
    "/properties/hot_minute/ask/wait/atLeast": practice("the last quarter of the minute"),
    "/properties/hot_minute/ask/wait/atMost": published("wa-001", 60, "s"),
    "/properties/hot_half_minute/ask/wait/atLeast": practice("the last ten seconds of thirty"),
    "/properties/hot_half_minute/ask/wait/atMost": published("wa-030", 30, "s"),
    "/properties/mains/limits/0/exclusiveMax": published("wa-006", 20, "Cel"),
    "/properties/cold_two_minutes/limits/0/exclusiveMax": published("wa-002", 20, "Cel"),
    "/properties/cold_two_minutes/ask/wait/atLeast": published("wa-002", 120, "s"),
    "/properties/cold_two_minutes/ask/wait/atMost": practice("within the minute after"),
  },
});

test("the mains belong to a cold sentinel outlet only", () => {
  const judge = compileJudge(WATER_OUTLET.checklist, createFormulaEngine());
  const asked = (sentinel: boolean) =>
    judge.judge({ particulars: { ...OUTLET, sentinel }, answers: {} }).points.mains?.asked;
  expect([asked(true), asked(false)]).toEqual([true, false]);
});
