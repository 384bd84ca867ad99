import type { Answers, Judgement } from "@roundbook/schemas";
import { expect, it } from "vitest";
import { withOperandReasons } from "./operand-reasons.ts";

const missing = { code: "missing", params: { name: "answers.earth" } };
const judged = (asked: boolean, of = "half", operand = "earth"): Judgement =>
  ({
    points: {
      [of]: { verdict: "undecided", why: missing, asked: true },
      [operand]: { verdict: null, why: { code: "stopped", params: {} }, asked },
    },
    problems: [{ pointer: `/answers/${of}`, ...missing }],
  }) as unknown as Judgement;
const codes = (judgement: Judgement, answers: Answers, of = "half") => {
  const { points, problems } = withOperandReasons(judgement, answers);
  return [points[of]?.why.code, problems[0]?.code];
};
const censored = { value: 0.05, unit: "Ohm", comparator: "<" } as const;

it("an answer nobody gave is missing", () => {
  expect(codes(judged(true), {})).toEqual(["missing", "missing"]);
});

it("a reading with a sign before it is there, and cannot be worked with", () => {
  expect(codes(judged(true), { earth: censored })).toEqual([
    "operand-censored",
    "operand-censored",
  ]);
});

it("nobody is sent to answer what is not asked", () => {
  expect(codes(judged(false), {})).toEqual(["operand-not-asked", "operand-not-asked"]);
});

it("in a repeat it is the same member's answer", () => {
  const judgement = judged(false, "half@left", "earth@left");
  expect(codes(judgement, {}, "half@left")).toEqual(["operand-not-asked", "operand-not-asked"]);
  expect(
    codes(judged(true, "half@left", "earth@left"), { "earth@left": censored }, "half@left"),
  ).toEqual(["operand-censored", "operand-censored"]);
});
