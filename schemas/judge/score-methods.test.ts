import { describe, expect, test } from "vitest";
import type { Answer, Answers } from "../checklist/answer-types.ts";
import type { ScoreDefinition } from "../checklist/meta-schema.ts";
import { graded, judgeOf, type Parts } from "./testing/checklists.ts";

const NA: Answer = { absent: { reason: "not-applicable" } };
const bands = [
  { title: "low", from: 0, outcome: "fail" as const },
  { title: "high", from: 3, outcome: "pass" as const },
];
const scored = (
  method: ScoreDefinition["method"],
  answers: Answers,
  more: Partial<ScoreDefinition> = {},
  parts: Partial<Parts> = {},
) => {
  const score: ScoreDefinition = {
    title: "S",
    of: ["a", "b", "c"],
    method,
    round: { rule: "half-up", decimals: 2 },
    bands,
    ...more,
  };
  const properties = { a: graded(), b: graded(), c: graded() };
  const judge = judgeOf({ properties, scores: { s: score }, ...parts });
  return judge.judge({ particulars: {}, answers }).scores.s;
};

describe("a score is worked out by its method and weights", () => {
  test.each([
    ["share-of-maximum", {}, 60],
    ["sum", {}, 9],
    ["mean", {}, 3],
    // (1·3 + 3 + 5) / (5·5) · 100
    ["share-of-maximum", { a: 3 }, 44],
    ["sum", { a: 3 }, 11],
    ["mean", { a: 3 }, 2.2],
    ["mean", { a: 2, b: 2, c: 2 }, 3],
    ["sum", { a: 1000, b: 1000, c: 1000 }, 9000],
  ] as const)("%s with weights %j of grades 1, 3, 5: %d", (method, weights, value) => {
    expect(scored(method, { a: 1, b: 3, c: 5 }, { weights })?.score).toBe(value);
  });

  test.each([
    ["half-up", 1.67],
    ["half-even", 1.67],
    ["half-away", 1.67],
    ["down", 1.66],
    ["up", 1.67],
  ] as const)("a mean of 5/3 rounded %s is %d", (rule, value) => {
    const round = { rule, decimals: 2 };
    expect(scored("mean", { a: 1, b: 2, c: 2 }, { round })?.score).toBe(value);
  });

  test.each([
    ["half-up", 2.13],
    ["half-even", 2.12],
    ["down", 2.12],
    ["up", 2.13],
  ] as const)("a mean of 17/8, exactly between two, rounded %s is %d", (rule, value) => {
    const weights = { a: 1, b: 1, c: 6 };
    const round = { rule, decimals: 2 };
    expect(scored("mean", { a: 1, b: 4, c: 2 }, { round, weights })?.score).toBe(value);
  });

  test("the band is that of the rounded score", () => {
    const round = { rule: "half-up", decimals: 0 } as const;
    expect(scored("mean", { a: 2, b: 3, c: NA }, { round })).toMatchObject({
      score: 3,
      band: "high",
      verdict: "pass",
    });
    expect(scored("mean", { a: 2, b: 3, c: NA })).toMatchObject({ score: 2.5, verdict: "fail" });
  });
});

describe("whatever the method", () => {
  const methods = ["share-of-maximum", "sum", "mean"] as const;

  test.each(methods)("%s leaves out an allowed absence, weight and all", (method) => {
    const weights = { c: 100 };
    expect(scored(method, { a: 4, b: 4, c: NA }, { weights })).toMatchObject({
      score: { "share-of-maximum": 80, sum: 8, mean: 4 }[method],
      answered: 2,
    });
  });

  test.each(methods)("%s without one of its answers is undecided", (method) => {
    for (const c of [undefined, 6, 1.5, "5", { absent: { reason: "no-access" } }]) {
      const answers = { a: 5, b: 5, ...(c === undefined ? {} : { c }) } as Answers;
      expect(scored(method, answers)).toMatchObject({ score: null, verdict: "undecided" });
    }
  });

  test.each(methods)("%s of nothing is not evaluated, never 0", (method) => {
    expect(scored(method, { a: NA, b: NA, c: NA })).toMatchObject({
      score: null,
      verdict: "not-evaluated",
    });
  });

  test.each(methods)("%s counts a repeated point once per member", (method) => {
    const repeated = (count: number | string) => ({
      particulars: { n: { title: "N", type: "integer" as const } },
      groups: [{ id: "g", title: "G", points: ["a"], repeat: { each: "Leaf", count } }],
    });
    const answers = { "a@1": 1, "a@2": 3, b: 5, c: NA };
    expect(scored(method, answers, {}, repeated(2))).toMatchObject({
      score: { "share-of-maximum": 60, sum: 9, mean: 3 }[method],
      answered: 3,
    });
    for (const parts of [repeated(3), repeated("asset.n")])
      expect(scored(method, answers, {}, parts)?.verdict).toBe("undecided");
  });
});
