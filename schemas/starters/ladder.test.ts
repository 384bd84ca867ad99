import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { practice, published, type Sheet } from "../testing/starters/starter-case.ts";
import { LADDER } from "./ladder.ts";

const deg = (value: number) => ({ value, unit: "deg" });
const m = (value: number) => ({ value, unit: "m" });
const COMMON = {
  tag: "ok",
  stiles: "ok",
  rungs: "ok",
  feet: "ok",
  fittings: "ok",
  clean: "ok",
  stands: "ok",
} as const;
const SHEETS: Readonly<Record<string, Sheet>> = {
  leaning: {
    particulars: { kind: "leaning ladder", material: "timber" },
    answers: { ...COMMON, bare: "ok", angle_to_ground: deg(75), above_landing: m(1.2) },
  },
  extension: {
    particulars: { kind: "extension ladder", material: "aluminium" },
    answers: { ...COMMON, sections: "ok", angle_to_ground: deg(75), above_landing: m(1.2) },
  },
  stepladder: {
    particulars: { kind: "stepladder", material: "glass fibre" },
    answers: { ...COMMON, locking_bars: "ok", treads: "ok", hinges: "ok" },
  },
};
const broken = (sheet: string, point: string) => ({
  sheet,
  point,
  tries: [["not-ok", "fail"] as const],
});

proveStarter({
  starter: LADDER,
  sheets: SHEETS,
  steps: [
    ...Object.keys(COMMON).map((point) => broken("stepladder", point)),
    broken("leaning", "bare"),
    broken("extension", "sections"),
    ...["locking_bars", "treads", "hinges"].map((point) => broken("stepladder", point)),
    {
      sheet: "leaning",
      point: "angle_to_ground",
      tries: [
        [deg(74), "pass"],
        [deg(73.9), "fail"],
        [deg(76), "pass"],
        [deg(76.1), "fail"],
        // A quarter of the height and a quarter of the length: both are within a degree of 75.
        [deg(75.9638), "pass"],
        [deg(75.5225), "pass"],
        [{ value: 1.309, unit: "rad" }, "pass"],
      ],
    },
    {
      sheet: "leaning",
      point: "above_landing",
      tries: [
        [m(1), "pass"],
        [m(1.01), "pass"],
        [m(0.99), "fail"],
        [{ value: 99, unit: "cm" }, "fail"],
      ],
    },
  ],
  numbers: {
    "/values/angle/const": published("la-001", 75, "deg"),
    "/values/either/const": practice("two rules of the trade lie within a degree of 75"),
    "/properties/above_landing/limits/0/min": published("la-002", 1, "m"),
  },
});

const judge = compileJudge(LADDER.checklist, createFormulaEngine());

test("a damaged ladder is not set up: nothing after the stop counts, whatever was answered", () => {
  const sheet = SHEETS.leaning;
  if (sheet === undefined) throw new Error("no sheet");
  const judged = judge.judge({
    ...sheet,
    answers: { ...sheet.answers, rungs: "not-ok", angle_to_ground: deg(60) },
  });
  expect(judged.overall).toBe("fail");
  expect(judged.points.angle_to_ground).toMatchObject({ asked: false, verdict: null });
  expect(judged.points.stands).toMatchObject({ asked: false, verdict: null });
});

test("points of the stepladder are asked for a stepladder only", () => {
  const asked = (kind: string) =>
    judge.judge({ particulars: { kind, material: "aluminium" }, answers: { ...COMMON } }).points
      .locking_bars?.asked;
  expect([asked("leaning ladder"), asked("stepladder")]).toEqual([false, true]);
});
