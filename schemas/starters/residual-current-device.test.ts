import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { broken, ms } from "../testing/starters/electrical.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { practice, published, type Sheet } from "../testing/starters/starter-case.ts";
import { RESIDUAL_CURRENT_DEVICE } from "./residual-current-device.ts";

const LOOKS = { whole: "ok", notice: "ok", half: "ok", button: "ok" } as const;
const both = (first: number, second: number) => [ms(first), ms(second)];
const GENERAL = {
  ...LOOKS,
  trip_1x: both(28, 31),
  current_5x: "five times",
  trip_5x: both(11, 12),
};
const SELECTIVE = {
  ...LOOKS,
  trip_1x_selective: both(200, 210),
  current_5x: "five times",
  trip_5x_selective: both(70, 75),
};
const SHEETS: Readonly<Record<string, Sheet>> = {
  general: { particulars: { type: "general", rated_current: 30 }, answers: GENERAL },
  selective: { particulars: { type: "selective", rated_current: 100 }, answers: SELECTIVE },
};
const TWO = practice("the two halves of the mains wave");

proveStarter({
  starter: RESIDUAL_CURRENT_DEVICE,
  sheets: SHEETS,
  steps: [
    ...broken("general", ...Object.keys(LOOKS)),
    {
      // The slower of the two halves of the wave counts.
      sheet: "general",
      point: "trip_1x",
      tries: [
        [both(20, 299), "pass"],
        [both(20, 300), "pass"],
        [both(301, 20), "fail"],
        [[ms(20)], "undecided"],
        [[ms(20), { value: 2000, unit: "ms", comparator: ">" }], "fail"],
      ],
    },
    {
      sheet: "general",
      point: "trip_5x",
      tries: [
        [both(10, 39), "pass"],
        [both(40, 10), "pass"],
        [both(10, 41), "fail"],
      ],
    },
    {
      sheet: "general",
      point: "current_5x",
      tries: [
        ["250 mA", "pass"],
        ["another", "fail"],
      ],
    },
    { sheet: "selective", point: "current_5x", tries: [["250 mA", "fail"]] },
    {
      // One that trips too early is found however slow the other half is.
      sheet: "selective",
      point: "trip_1x_selective",
      tries: [
        [both(131, 499), "pass"],
        [both(130, 500), "pass"],
        [both(129, 300), "fail"],
        [both(300, 501), "fail"],
      ],
    },
    {
      sheet: "selective",
      point: "trip_5x_selective",
      tries: [
        [both(51, 149), "pass"],
        [both(50, 150), "pass"],
        [both(49, 100), "fail"],
        [both(100, 151), "fail"],
      ],
    },
  ],
  numbers: {
    "/properties/trip_1x/several/count": TWO,
    "/properties/trip_1x/limits/0/max": published("el-095", 300),
    "/properties/trip_1x_selective/several/count": TWO,
    "/properties/trip_1x_selective/limits/0/min": published("el-106", 130),
    "/properties/trip_1x_selective/limits/0/max": published("el-106", 500),
    "/properties/current_5x/limits/0/when#30": published("el-104", 30),
    "/properties/current_5x/limits/1/when#30": published("el-104", 30),
    "/properties/trip_5x/several/count": TWO,
    "/properties/trip_5x/limits/0/max": published("el-097", 40),
    "/properties/trip_5x_selective/several/count": TWO,
    "/properties/trip_5x_selective/limits/0/min": published("el-100", 50),
    "/properties/trip_5x_selective/limits/0/max": published("el-100", 150),
  },
});

const judge = compileJudge(RESIDUAL_CURRENT_DEVICE.checklist, createFormulaEngine());
const general = { type: "general", rated_current: 30 };

test("the fast test may be absent where it is not asked for; the one at the rated current may not", () => {
  const absent = { absent: { reason: "not-applicable" } } as const;
  const without = judge.judge({
    particulars: general,
    answers: { ...GENERAL, current_5x: absent, trip_5x: absent },
  });
  expect([without.overall, without.points.trip_5x?.verdict]).toEqual(["pass", "not-counted"]);
  const none = judge.judge({ particulars: general, answers: { ...GENERAL, trip_1x: absent } });
  expect(none.overall).toBe("undecided");
});

test("a damaged device is not tested", () => {
  const { points } = judge.judge({
    particulars: general,
    answers: { ...GENERAL, whole: "not-ok" },
  });
  for (const name of ["half", "trip_1x", "trip_5x", "button"])
    expect([name, points[name]?.asked]).toEqual([name, false]);
});
