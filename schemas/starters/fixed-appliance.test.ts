import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { broken, FIXED_NUMBERS, megohm, ohm } from "../testing/starters/electrical.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { published, type Sheet } from "../testing/starters/starter-case.ts";
import { FIXED_APPLIANCE } from "./fixed-appliance.ts";

const LOOKS = { enclosure: "ok", connection: "ok", fixing: "ok", isolator: "ok" } as const;
const TESTED = {
  ...LOOKS,
  isolated: "ok",
  point_to_point: ohm(0.2),
  insulation: megohm(50),
  works: "ok",
} as const;
const FAN = { heating: false, rated_power: 0.1, earth_path: 20, csa: 2.5, surge_protected: false };
const { insulation: _, ...untested } = TESTED;
const SHEETS: Readonly<Record<string, Sheet>> = {
  fan: { particulars: FAN, answers: TESTED },
  "hand drier": { particulars: { ...FAN, heating: true, rated_power: 2 }, answers: TESTED },
  electronic: { particulars: { ...FAN, surge_protected: true }, answers: untested },
};

proveStarter({
  starter: FIXED_APPLIANCE,
  sheets: SHEETS,
  steps: [
    ...broken("fan", ...Object.keys(LOOKS), "isolated", "works"),
    {
      // 0.1 Ohm and 20 m at 7.41 Ohm/km.
      sheet: "fan",
      point: "point_to_point",
      tries: [
        [ohm(0.248), "pass"],
        [ohm(0.2482), "pass"],
        [{ value: 248.2, unit: "mOhm" }, "pass"],
        [ohm(0.249), "fail"],
      ],
    },
    {
      sheet: "fan",
      point: "insulation",
      tries: [
        [megohm(1.01), "pass"],
        [megohm(1), "pass"],
        [megohm(0.99), "fail"],
      ],
    },
    {
      sheet: "hand drier",
      point: "insulation",
      tries: [
        [megohm(0.31), "pass"],
        [megohm(0.3), "pass"],
        [megohm(0.29), "fail"],
      ],
    },
  ],
  numbers: {
    ...FIXED_NUMBERS,
    "/properties/insulation/limits/0/min": published("el-065", 0.3),
    "/properties/insulation/limits/0/when#3.0": published("el-065", 3),
    "/properties/insulation/limits/1/min": published("el-064", 1),
    "/properties/insulation/limits/1/when#3.0": published("el-065", 3),
  },
});

const judge = compileJudge(FIXED_APPLIANCE.checklist, createFormulaEngine());

test("what is not proved dead is not tested, and what failed is not switched on again", () => {
  const asked = (answers: Sheet["answers"]) => {
    const { points } = judge.judge({ particulars: FAN, answers: { ...TESTED, ...answers } });
    return [points.point_to_point?.asked, points.insulation?.asked, points.works?.asked];
  };
  expect(asked({ isolated: "not-ok" })).toEqual([false, false, false]);
  expect(asked({ enclosure: "not-ok" })).toEqual([false, false, false]);
  expect(asked({ point_to_point: ohm(2) })).toEqual([true, true, false]);
  expect(asked({})).toEqual([true, true, true]);
});
