import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOne } from "./testing/checklists.ts";

const plate: PointDefinition = {
  $ref: "#/$defs/choices",
  title: "Plate",
  items: {
    oneOf: [
      { const: "whole", title: "Whole" },
      { const: "marked", title: "Marked" },
      { const: "cracked", title: "Cracked" },
    ],
  },
  limits: [{ accept: ["whole", "marked"] }, { accept: ["whole"], severity: "advisory" }],
};
const hinges: PointDefinition = {
  $ref: "#/$defs/count",
  title: "Hinges",
  maximum: 6,
  limits: [{ min: 3 }],
};
const codeOf = (point: PointDefinition, answer: unknown) => {
  const { verdict, why } = judgeOne(point, answer as Answer);
  return [verdict, why.code];
};

describe("of several choices every one has to be accepted", () => {
  test.each([
    [["whole"], "pass", "accepted"],
    [["marked"], "advisory", "not-accepted"],
    [["whole", "marked"], "advisory", "not-accepted"],
    [["cracked"], "fail", "not-accepted"],
    [["whole", "cracked"], "fail", "not-accepted"],
    [[], "undecided", "not-answered"],
    [undefined, "undecided", "not-answered"],
    [["whole", "bent"], "undecided", "not-among-choices"],
    [["whole", 1], "undecided", "not-among-choices"],
    [["constructor"], "undecided", "not-among-choices"],
    ["whole", "undecided", "not-an-answer"],
    [{ 0: "whole", length: 1 }, "undecided", "not-an-answer"],
  ])("%j: %s", (answer, verdict, code) => {
    expect(codeOf(plate, answer)).toEqual([verdict, code]);
  });

  test("whatever order they come in", () => {
    expect(codeOf(plate, ["marked", "whole"])).toEqual(codeOf(plate, ["whole", "marked"]));
  });
});

describe("a count is a whole number from none on", () => {
  test.each([
    [3, "pass", "within-min"],
    [6, "pass", "within-min"],
    [2, "fail", "below-min"],
    [0, "fail", "below-min"],
    [-1, "undecided", "grade-out-of-range"],
    [7, "undecided", "grade-out-of-range"],
    [1.5, "undecided", "not-an-answer"],
    [3.000_000_1, "undecided", "not-an-answer"],
    ["3", "undecided", "not-an-answer"],
    [Number.NaN, "undecided", "not-an-answer"],
    [Number.POSITIVE_INFINITY, "undecided", "not-an-answer"],
    [2 ** 53, "undecided", "not-an-answer"],
    [{ value: 3, unit: "1" }, "undecided", "not-an-answer"],
    [undefined, "undecided", "not-answered"],
  ])("%j: %s", (answer, verdict, code) => {
    expect(codeOf(hinges, answer)).toEqual([verdict, code]);
  });

  test("even where the checklist would begin below none", () => {
    const below: PointDefinition = { ...hinges, minimum: -5, limits: [{ max: 3 }] };
    expect(codeOf(below, -1)).toEqual(["undecided", "grade-out-of-range"]);
    expect(codeOf(below, 0)).toEqual(["pass", "within-max"]);
  });
});
