import { expect, test } from "vitest";
import { createFormulaEngine } from "../formulas/index.ts";
import { compileJudge } from "../judge/compile-judge.ts";
import { proveStarter } from "../testing/starters/prove.ts";
import { memory, practice, published, type Sheet } from "../testing/starters/starter-case.ts";
import { CALORIFIER } from "./calorifier.ts";

const cel = (value: number) => ({ value, unit: "Cel" });
const found = (value: number, unit = "[CFU]/L") => ({
  sample: "VH 117",
  result: { value, unit },
});
const ALL = {
  capacity: 300,
  circulates: true,
  gauge: true,
  drained: true,
  sampled: true,
};
const SHEETS: Readonly<Record<string, Sheet>> = {
  everything: {
    particulars: ALL,
    answers: {
      tight: "ok",
      lagging: "ok",
      flow: cel(62),
      back: cel(54),
      stored: cel(61),
      drain: "clear",
      legionella: found(0),
    },
  },
  "point of use": {
    particulars: { ...ALL, circulates: false, gauge: false, drained: false, sampled: false },
    answers: { tight: "ok", lagging: "ok", flow: cel(62) },
  },
};
const sheet = "everything";

proveStarter({
  starter: CALORIFIER,
  sheets: SHEETS,
  steps: [
    { sheet, point: "tight", tries: [["not-ok", "fail"]] },
    { sheet, point: "lagging", tries: [["not-ok", "fail"]] },
    {
      sheet,
      point: "flow",
      tries: [
        [cel(60.1), "pass"],
        [cel(60), "pass"],
        [cel(59.9), "fail"],
        [{ value: 140, unit: "[degF]" }, "pass"],
        [{ value: 139.9, unit: "[degF]" }, "fail"],
      ],
    },
    {
      sheet,
      point: "back",
      tries: [
        [cel(52), "pass"],
        [cel(50), "pass"],
        [cel(49.9), "fail"],
        [{ value: 122, unit: "[degF]" }, "pass"],
      ],
    },
    {
      sheet,
      point: "back",
      judged: "drop",
      tries: [
        [cel(52.1), "pass"],
        [cel(52), "pass"],
        [cel(51.9), "advisory"],
        [cel(62), "pass"],
        [cel(62.1), "advisory"],
      ],
    },
    {
      sheet,
      point: "stored",
      tries: [
        [cel(60), "pass"],
        [cel(59.9), "fail"],
      ],
    },
    {
      sheet,
      point: "drain",
      tries: [
        ["discoloured", "advisory"],
        ["debris", "fail"],
        ["no-flow", "fail"],
      ],
    },
    {
      sheet,
      point: "legionella",
      tries: [
        [found(100), "pass"],
        [found(101), "advisory"],
        [found(1000), "advisory"],
        [found(1001), "fail"],
        [found(0.1, "[CFU]/mL"), "pass"],
        [found(1.1, "[CFU]/mL"), "fail"],
        [{ sample: "VH 117" }, "undecided"],
      ],
    },
  ],
  numbers: {
    "/properties/flow/limits/0/min": published("wa-003", 60, "Cel"),
    "/properties/back/limits/0/min": published("wa-004", 50, "Cel"),
    "/properties/stored/limits/0/min": published("wa-029", 60, "Cel"),
    "/properties/drop/limits/0/min": practice("a return is not hotter than its flow"),
    "/properties/drop/limits/0/max": practice("60 less 50"),
    "/properties/legionella/limits/0/max": memory("HSG274 part 2, action levels"),
    "/properties/legionella/limits/1/max": memory("HSG274 part 2, action levels"),
  },
});

const judge = compileJudge(CALORIFIER.checklist, createFormulaEngine());

test("a sample without its result keeps the whole inspection undecided until it comes", () => {
  const { particulars, answers } = SHEETS[sheet] ?? { particulars: {}, answers: {} };
  const waiting = judge.judge({
    particulars,
    answers: { ...answers, legionella: { sample: "VH 117" } },
  });
  expect([waiting.overall, waiting.complete, waiting.pending]).toEqual([
    "undecided",
    false,
    ["legionella"],
  ]);
  const come = judge.judge({ particulars, answers });
  expect([come.overall, come.complete, come.pending]).toEqual(["pass", true, []]);
});

test("what lies between flow and return is worked out, and undecided when one is missing", () => {
  const { particulars, answers } = SHEETS[sheet] ?? { particulars: {}, answers: {} };
  expect(judge.judge({ particulars, answers }).points.drop).toMatchObject({
    value: 8,
    verdict: "pass",
  });
  const { back: _, ...without } = answers;
  expect(judge.judge({ particulars, answers: without }).points.drop?.verdict).toBe("undecided");
});
