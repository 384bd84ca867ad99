import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { ScoreDefinition } from "../checklist/meta-schema.ts";
import { checklist, graded, judgeOf, type Parts } from "./testing/checklists.ts";

const NA: Answer = { absent: { reason: "not-applicable" } };
const score: ScoreDefinition = {
  title: "Condition",
  of: ["a", "b", "c"],
  method: "share-of-maximum",
  round: { rule: "half-up", decimals: 0 },
  bands: [
    { title: "poor", from: 0, outcome: "fail", next: "at-once" },
    { title: "good", from: 80, outcome: "pass", next: "P3Y" },
    { title: "fair", from: 50, outcome: "advisory" },
  ],
};
const parts: Parts = {
  properties: { a: graded(), b: graded(), c: graded() },
  scores: { condition: score },
};
const judged = (answers: Record<string, Answer>, changed: Parts = parts) => {
  const { overall, scores } = judgeOf(changed).judge({ particulars: {}, answers });
  return { overall, ...scores.condition };
};

describe("a score", () => {
  test.each([
    [{ a: 5, b: 5, c: 5 }, 100, "good", "pass", "P3Y", 3],
    [{ a: 4, b: 4, c: 4 }, 80, "good", "pass", "P3Y", 3],
    [{ a: 4, b: 4, c: 3 }, 73, "fair", "advisory", null, 3],
    [{ a: 1, b: 2, c: 1 }, 27, "poor", "fail", "at-once", 3],
    [{ a: 3, b: NA, c: 4 }, 70, "fair", "advisory", null, 2],
    [{ a: NA, b: NA, c: 4 }, 80, "good", "pass", "P3Y", 1],
  ])("of %j is %d per cent: %s", (answers, value, band, verdict, next, answered) => {
    expect(judged(answers)).toMatchObject({
      overall: verdict,
      score: value,
      band,
      verdict,
      next,
      answered,
    });
  });

  test.each([
    ["missing", { a: 5, b: 5 }],
    [
      "absent for a reason that is not allowed",
      { a: 5, b: 5, c: { absent: { reason: "no-access" } } },
    ],
    ["out of its range", { a: 5, b: 5, c: 6 }],
    ["no whole number", { a: 5, b: 5, c: 4.5 }],
  ] as const)("with a point %s is undecided, whatever the others say", (_, answers) => {
    expect(judged({ ...answers })).toMatchObject({
      overall: "undecided",
      score: null,
      verdict: "undecided",
      why: { code: "score-point-undecided", params: { point: "c" } },
    });
  });

  test("of nothing is not evaluated, never 0 per cent", () => {
    expect(judged({ a: NA, b: NA, c: NA })).toMatchObject({
      overall: "not-evaluated",
      score: null,
      verdict: "not-evaluated",
      next: null,
    });
  });

  test("leaves out a point that is not asked, whatever answer was kept for it", () => {
    const c = graded({ ask: { when: "answers.a > 3.0" } });
    const changed: Parts = { ...parts, properties: { ...parts.properties, c } };
    expect(judged({ a: 2, b: 4, c: 5 }, changed)).toMatchObject({ score: 60, answered: 2 });
    expect(judged({ a: 4, b: 4, c: 5 }, changed)).toMatchObject({ score: 87, answered: 3 });
    expect(judged({ b: 4, c: 5 }, changed)).toMatchObject({ score: null, verdict: "undecided" });
  });

  test("below every band, or of a point that has no maximum, is undecided", () => {
    const bands = [{ title: "good", from: 80, outcome: "pass" as const }];
    const low = { ...parts, scores: { condition: { ...score, bands } } };
    expect(judged({ a: 1, b: 1, c: 1 }, low)).toMatchObject({ score: 20, verdict: "undecided" });
    const open = {
      ...parts,
      properties: { ...parts.properties, c: graded({ maximum: undefined }) },
    };
    expect(judged({ a: 5, b: 5, c: 5 }, open).verdict).toBe("undecided");
    const stranger = { ...parts, scores: { condition: { ...score, of: ["constructor"] } } };
    expect(judged({ a: 5, b: 5, c: 5 }, stranger).verdict).toBe("undecided");
  });

  test("in a band without an outcome has no verdict, and was evaluated all the same", () => {
    const bands = [{ title: "any", from: 0, next: "P1Y" }];
    const changed = { ...parts, scores: { condition: { ...score, bands } } };
    expect(checklist(changed).scores).toBeDefined();
    expect(judged({ a: 5, b: 5, c: 5 }, changed)).toMatchObject({
      overall: null,
      verdict: null,
      next: "P1Y",
    });
  });
});
