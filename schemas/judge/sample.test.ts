import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { LimitDefinition, PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf } from "./testing/checklists.ts";

const MAX_10: LimitDefinition[] = [{ max: 10 }];
const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Clean?",
  limits: [{ accept: ["ok"] }],
};
const judged = (water: unknown, limits: LimitDefinition[] | undefined = MAX_10) => {
  const sample: PointDefinition = {
    $ref: "#/$defs/sample",
    title: "Water",
    quantity: { unit: "mg/L", alsoIn: ["ug/L"] },
    ...(limits.length === 0 ? {} : { limits }),
  };
  return judgeOf({ properties: { water: sample, clean: check } }).judge({
    particulars: {},
    answers: { clean: "ok", ...(water === undefined ? {} : { water: water as Answer }) },
  });
};
const taken = (result?: object) => ({ sample: "B 7", ...(result && { result }) });

describe("a sample whose result has not come", () => {
  test.each([
    ["with limits", MAX_10, "undecided"],
    ["without limits", [], null],
  ] as const)("%s keeps the whole inspection undecided and open", (_, limits, verdict) => {
    const found = judged(taken(), [...limits]);
    expect(found).toMatchObject({ overall: "undecided", complete: false, pending: ["water"] });
    expect(found.points.water).toMatchObject({
      verdict,
      why: { code: "result-awaited", params: { sample: "B 7" } },
    });
    expect(found.problems).toEqual([
      { pointer: "/answers/water", code: "result-awaited", params: { sample: "B 7" } },
    ]);
  });

  test("hides no fail elsewhere", () => {
    const { judge } = judgeOf({ properties: { clean: check, water: sampleOf() } });
    const answers = { clean: "not-ok", water: taken() } as Record<string, Answer>;
    expect(judge({ particulars: {}, answers })).toMatchObject({ overall: "fail", complete: false });
  });
});

const sampleOf = (): PointDefinition => ({
  $ref: "#/$defs/sample",
  title: "Water",
  quantity: { unit: "mg/L" },
});

describe("the result of a sample", () => {
  test.each([
    [{ value: 10, unit: "mg/L" }, "pass"],
    [{ value: 10.001, unit: "mg/L" }, "fail"],
    [{ value: 10_000, unit: "ug/L" }, "pass"],
    [{ value: 10_001, unit: "ug/L" }, "fail"],
    [{ value: 10, unit: "mg/L", comparator: "<" }, "pass"],
    [{ value: 10, unit: "mg/L", comparator: ">" }, "fail"],
    [{ value: 9, unit: "mg/L", comparator: ">" }, "undecided"],
    [{ value: 1, unit: "mm" }, "undecided"],
    [{ value: "10", unit: "mg/L" }, "undecided"],
    [{}, "undecided"],
  ] as const)("%j: %s", (result, verdict) => {
    const { overall, pending } = judged(taken(result));
    expect([overall, pending]).toEqual([verdict, []]);
  });

  test.each([
    ["no label", { result: { value: 1, unit: "mg/L" } }],
    ["a blank label", { sample: " ", result: { value: 1, unit: "mg/L" } }],
    ["a number for a label", { sample: 7, result: { value: 1, unit: "mg/L" } }],
    ["no sample", { value: 1, unit: "mg/L" }],
    ["a word", "B 7"],
  ])("with %s is undecided", (_, answer) => {
    expect(judged(answer)).toMatchObject({ overall: "undecided", pending: [] });
  });

  test("missing altogether is undecided", () => {
    expect(judged(undefined)).toMatchObject({ overall: "undecided", pending: [] });
  });
});

test("samples of a repeat wait under their own names", () => {
  const judge = judgeOf({
    properties: { water: sampleOf() },
    groups: [{ id: "g", title: "G", points: ["water"], repeat: { each: "Tap", count: 2 } }],
  });
  const answers = {
    "water@1": taken({ value: 1, unit: "mg/L" }),
    "water@2": taken(),
  } as Record<string, Answer>;
  expect(judge.judge({ particulars: {}, answers }).pending).toEqual(["water@2"]);
});
