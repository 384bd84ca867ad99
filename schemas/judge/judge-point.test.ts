import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { graded, judgeOf, judgeOne, reading } from "./testing/checklists.ts";

const why = (point: PointDefinition, answer: unknown) => {
  const judged = judgeOne(point, answer as Answer);
  return [judged.verdict, judged.why.code];
};
const MAX_2 = reading("Ohm", [{ max: 2 }], { ask: { absentAllowed: ["not-applicable"] } });
const check: PointDefinition = {
  $ref: "#/$defs/check",
  title: "Check",
  limits: [{ accept: ["ok"] }],
};
const choice: PointDefinition = {
  $ref: "#/$defs/choice",
  title: "Choice",
  oneOf: [
    { const: "dry", title: "Dry" },
    { const: "damp", title: "Damp" },
    { const: "wet", title: "Wet" },
  ],
  limits: [{ accept: ["dry", "damp"] }, { accept: ["dry"], severity: "advisory" }],
};
const absent = (reason: string) => ({ absent: { reason } });

describe("what was not read is never a pass", () => {
  test.each([
    ["nothing", undefined, "undecided", "not-answered"],
    ["null", null, "undecided", "not-answered"],
    ["an allowed absence", absent("not-applicable"), "not-counted", "absent"],
    ["an absence that is not allowed", absent("no-access"), "undecided", "absence-not-allowed"],
    ["an absence for no known reason", absent("lazy"), "undecided", "not-an-answer"],
    ["NaN", { value: Number.NaN, unit: "Ohm" }, "undecided", "not-finite-reading"],
    ["minus infinity", { value: -1 / 0, unit: "Ohm" }, "undecided", "not-finite-reading"],
    ["no unit", { value: 1 }, "undecided", "not-an-answer"],
    ["a bare number", 1, "undecided", "not-an-answer"],
    ["a number as text", { value: "1", unit: "Ohm" }, "undecided", "not-an-answer"],
    ["another dimension", { value: 1, unit: "m" }, "undecided", "unit-not-convertible"],
    ["an unknown unit", { value: 1, unit: "ohms" }, "undecided", "unit-not-convertible"],
    [
      "a strange comparator",
      { value: 1, unit: "Ohm", comparator: "~" },
      "undecided",
      "not-an-answer",
    ],
    ["an inherited value", Object.create({ value: 1, unit: "Ohm" }), "undecided", "not-an-answer"],
    ["a list", [1], "undecided", "not-an-answer"],
    ["ok", "ok", "undecided", "not-an-answer"],
  ])("%s", (_, answer, verdict, code) => {
    expect(why(MAX_2, answer)).toEqual([verdict, code]);
  });

  test("a reading that also claims to be absent is neither: it is not well formed, and not excused", () => {
    expect(why(MAX_2, { value: 3, unit: "Ohm", ...absent("not-applicable") })[0]).toBe("undecided");
  });

  test("a point named like a method is undecided when missing", () => {
    const names = ["constructor", "toString", "valueOf", "hasownproperty"];
    const judge = judgeOf({ properties: Object.fromEntries(names.map((name) => [name, check])) });
    const { points } = judge.judge({ particulars: {}, answers: {} });
    expect(names.map((name) => points[name]?.verdict)).toEqual(names.map(() => "undecided"));
  });

  test("a point whose own unit is unknown is undecided in that unit too", () => {
    expect(why(reading("ohms", [{ max: 2 }]), { value: 1, unit: "ohms" })[0]).toBe("undecided");
  });
});

describe("without limits there is no verdict", () => {
  test.each([
    ["a reading", { value: 1, unit: "Ohm" }, "no-limits"],
    ["nothing", undefined, "not-answered"],
    ["an absence", absent("not-applicable"), "absence-not-allowed"],
  ])("%s", (_, answer, code) => {
    expect(why(reading("Ohm"), answer)).toEqual([null, code]);
  });
});

describe("limits", () => {
  test.each([
    [1.9, "pass", "within-max"],
    [2, "pass", "within-max"],
    [2.1, "fail", "above-max"],
  ])("%d Ohm against at most 2 Ohm, in three units", (ohm, verdict, code) => {
    expect(why(MAX_2, { value: ohm, unit: "Ohm" })).toEqual([verdict, code]);
    expect(why(MAX_2, { value: ohm * 1000, unit: "mOhm" })).toEqual([verdict, code]);
    expect(why(MAX_2, { value: ohm / 1000, unit: "kOhm" })).toEqual([verdict, code]);
  });

  test("the reason says by how much", () => {
    expect(judgeOne(MAX_2, { value: 2.1, unit: "Ohm" }).why.params).toEqual({
      value: 2.1,
      comparator: "",
      bound: 2,
      by: 0.1,
      unit: "Ohm",
    });
  });

  test("the bound nearest to a passing reading is the point's own", () => {
    const point = reading("mm", [{ min: 2, max: 4 }]);
    expect(judgeOne(point, { value: 2.5, unit: "mm" }).bound).toBe(2);
    expect(judgeOne(point, { value: 3.5, unit: "mm" }).bound).toBe(4);
    expect(judgeOne(point, { value: 5, unit: "mm" }).bound).toBe(4);
    expect(judgeOne(point, { value: 5, unit: "mm" }).limits.map((limit) => limit.kind)).toEqual([
      "min",
      "max",
    ]);
  });

  test.each([
    [{ min: 10 }, { min: 20, severity: "advisory" }, 25, "", "pass"],
    [{ min: 10 }, { min: 20, severity: "advisory" }, 15, "", "advisory"],
    [{ min: 10 }, { min: 20, severity: "advisory" }, 5, "", "fail"],
    [{ min: 10 }, { min: 20, severity: "advisory" }, 15, ">", "undecided"],
    [{ min: 10 }, { min: 20, severity: "advisory" }, 5, ">", "undecided"],
    [{ min: 30 }, { max: 20, severity: "advisory" }, 25, ">", "undecided"],
    [{ min: 10 }, { max: 20, severity: "advisory" }, 25, ">", "advisory"],
  ] as const)("%j and %j: %d %s is %s", (hard, soft, value, comparator, verdict) => {
    const point = reading("Cel", [hard, soft]);
    const answer = { value, unit: "Cel", ...(comparator === "" ? {} : { comparator }) };
    expect(judgeOne(point, answer).verdict).toBe(verdict);
  });

  test.each([
    ["ok", "pass", "accepted"],
    ["not-ok", "fail", "not-accepted"],
    ["maybe", "undecided", "not-among-choices"],
    [true, "undecided", "not-an-answer"],
  ])("a check answered %j", (answer, verdict, code) => {
    expect(why(check, answer)).toEqual([verdict, code]);
  });

  test.each([
    ["dry", "pass"],
    ["damp", "advisory"],
    ["wet", "fail"],
    ["ok", "undecided"],
  ])("a choice answered %j is %s", (answer, verdict) => {
    expect(why(choice, answer)[0]).toBe(verdict);
  });

  test.each([
    [[{ min: 3 }], 3, "pass"],
    [[{ min: 3 }], 2, "fail"],
    [[{ accept: [4, 5] }], 4, "pass"],
    [[{ accept: [4, 5] }], 3, "fail"],
    [[{ accept: ["4"] }], 4, "fail"],
    [[{ min: 3 }], 6, "undecided"],
    [[{ min: 3 }], 3.5, "undecided"],
  ])("a grade against %j: %d is %s", (limits, answer, verdict) => {
    expect(why(graded({ limits }), answer)[0]).toBe(verdict);
  });

  test("a limit that says nothing about the kind of point leaves it undecided", () => {
    expect(why({ ...check, limits: [{ max: 3 }] }, "ok")[1]).toBe("limit-not-for-kind");
    expect(why(reading("Ohm", [{ accept: [1] }]), { value: 1, unit: "Ohm" })[0]).toBe("undecided");
  });
});
