import { describe, expect, test } from "vitest";
import type { Answers } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf, reading } from "./testing/checklists.ts";

const judged = (x: PointDefinition, answer: unknown) =>
  judgeOf({ properties: { x } }).judge({
    particulars: {},
    answers: { x: answer } as unknown as Answers,
  });

const point = (kind: string, more: Partial<PointDefinition> = {}): PointDefinition => ({
  $ref: `#/$defs/${kind}` as PointDefinition["$ref"],
  title: "Point",
  ask: { mandatory: true },
  ...more,
});
const text = point("text", { maxLength: 3 });
const options = { oneOf: ["a", "b"].map((word) => ({ const: word, title: word })) };
const choices = point("choices", { items: options, limits: [{ accept: ["a"] }] });

describe("an answer that is not well formed", () => {
  test.each([
    ["a text that is too long", text, "long"],
    ["a text beyond what is kept", point("text"), "x".repeat(4001)],
    ["a commitment that is none", point("text"), { commit: "x" }],
    [
      "a signature with a drawing that is no hash",
      point("signature"),
      { signedBy: "A", drawing: 7 },
    ],
    ["a signature with more", point("signature"), { signedBy: "A", more: 1 }],
    ["a photo without its hash", point("photo"), [""]],
    ["a choice that is no word", choices, [{ toString: 1, valueOf: 1 }]],
  ] as const)("answers nothing: %s", (_, x, answer) => {
    const { complete, points, problems } = judged(x, answer);
    expect(complete).toBe(false);
    expect(points.x?.verdict).not.toBe("pass");
    expect(problems.map(({ pointer }) => pointer)).toContain("/answers/x");
  });

  test("makes no sheet that is done, mandatory or not", () => {
    const x = reading("Ohm", [{ max: 2 }]);
    for (const answer of [{ value: "1", unit: "Ohm" }, { value: 1, unit: "m" }, 1])
      expect(judged(x, answer)).toMatchObject({ overall: "undecided", complete: false });
    expect(judged(x, { value: 1, unit: "Ohm" }).complete).toBe(true);
  });
});

test("a guard band beyond all numbers passes nothing", () => {
  for (const [uncertainty, guardFactor] of [
    [1e308, 3],
    [1.5e308, 1],
  ] as const) {
    const decision = { rule: "guarded-rejection", uncertainty, guardFactor } as const;
    const x = reading("Ohm", [{ max: 1.5e308, decision }]);
    expect(judged(x, { value: 1, unit: "Ohm" }).points.x).toMatchObject({
      verdict: "undecided",
      why: { code: "not-finite" },
    });
  }
});

test("answers to no point are told in one order, whatever order they came in", () => {
  const judge = judgeOf({ properties: { x: choices } });
  const pointers = (answers: Answers) =>
    judge.judge({ particulars: {}, answers }).problems.map(({ pointer }) => pointer);
  expect(pointers({ z: "ok", y: "ok", x: ["a"] })).toEqual(["/answers/y", "/answers/z"]);
  expect(pointers({ x: ["a"], y: "ok", z: "ok" })).toEqual(["/answers/y", "/answers/z"]);
});
