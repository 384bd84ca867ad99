import { describe, expect, test } from "vitest";
import type { Answer, Answers } from "../checklist/answer-types.ts";
import type { PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf, type Parts, reading } from "./testing/checklists.ts";

const calculated = (calculate: string, more: Partial<PointDefinition> = {}): PointDefinition => ({
  $ref: "#/$defs/calculated",
  title: "Worked out",
  quantity: { unit: "Ohm" },
  calculate,
  limits: [{ max: 2 }],
  ...more,
});
const ohms = (value: number, more: object = {}): Answer =>
  ({ value, unit: "Ohm", ...more }) as Answer;
const judged = (properties: Parts["properties"], answers: Answers) =>
  judgeOf({ properties }).judge({ particulars: {}, answers });

describe("what is worked out", () => {
  const sum = { a: reading("Ohm"), b: reading("Ohm"), sum: calculated("answers.a + answers.b") };

  test.each([
    [1, 1000, 2, "pass"],
    [1, 1000.001, 2.000_001, "fail"],
    [0.1, 200, 0.3, "pass"],
  ])("of %d Ohm and %d mOhm is %d Ohm: %s", (a, b, value, verdict) => {
    const found = judged(sum, { a: ohms(a), b: { value: b, unit: "mOhm" } });
    expect(found.points.sum).toMatchObject({ verdict, value, asked: true });
    expect(found.overall).toBe(verdict);
  });

  test.each([
    ["missing", {}],
    ["absent", { b: { absent: { reason: "no-access" } } }],
    ["beyond the instrument's range", { b: { value: 0, unit: "mOhm", comparator: "<" } }],
    ["in another dimension", { b: { value: 0, unit: "m" } }],
  ])("from an answer that is %s is undecided", (_, b) => {
    const { points, overall } = judged(sum, { a: ohms(0), ...(b as Answers) });
    expect([points.sum?.verdict, points.sum?.value, overall]).toEqual([
      "undecided",
      undefined,
      "undecided",
    ]);
  });

  test("takes no answer from anybody", () => {
    for (const answer of [ohms(0), "ok", 0, { absent: { reason: "not-applicable" } }] as Answer[])
      expect(judged(sum, { sum: answer }).overall).toBe("undecided");
    const given = judged(sum, { a: ohms(9), b: ohms(9), sum: ohms(0) });
    expect(given.points.sum).toMatchObject({ verdict: "fail", value: 18 });
  });

  test("feeds what is worked out from it", () => {
    const chain = { ...sum, twice: calculated("answers.sum * 2") };
    const found = judged(chain, { a: ohms(0.5), b: ohms(0.5) });
    expect([found.points.twice?.value, found.overall]).toEqual([2, "pass"]);
    expect(judged(chain, { a: ohms(0.5) }).points.twice?.verdict).toBe("undecided");
  });

  test("without a number for a result is undecided", () => {
    for (const formula of ["1.0 / 0.0", "'x'", "1 == 1", "answers.", "sqrt(0.0 - 1.0)"])
      expect(judged({ a: reading("Ohm"), x: calculated(formula) }, { a: ohms(1) }).overall).toBe(
        "undecided",
      );
  });

  test("needs a unit to be told in", () => {
    const bare = calculated("answers.a", { quantity: undefined });
    expect(judged({ a: reading("Ohm"), bare }, { a: ohms(1) }).points.bare?.verdict).toBe(
      "undecided",
    );
  });

  test("is not worked out where it is not asked", () => {
    const asked = { a: reading("Ohm"), x: calculated("answers.a", { ask: { when: "1 == 2" } }) };
    expect(judged(asked, { a: ohms(1) }).points.x).toMatchObject({ asked: false, verdict: null });
  });
});

describe("a circle is never a pass", () => {
  test.each([
    ["of one", { x: calculated("answers.x") }],
    ["of two", { x: calculated("answers.y"), y: calculated("answers.x * 0") }],
    [
      "of three",
      { x: calculated("answers.y"), y: calculated("answers.z"), z: calculated("answers.x") },
    ],
    [
      "by way of a condition",
      { x: calculated("1.0", { ask: { when: "answers.y < 9.0" } }), y: calculated("answers.x") },
    ],
  ] as const)("%s", (_, properties) => {
    const found = judged({ a: reading("Ohm"), ...properties }, { a: ohms(1) });
    expect(found.overall).toBe("undecided");
    expect(Object.values(found.points).map(({ verdict }) => verdict)).not.toContain("pass");
  });

  test("by way of a named value", () => {
    const judge = judgeOf({
      values: { v: { unit: "Ohm", formula: "answers.x" } },
      properties: { a: reading("Ohm"), x: calculated("v") },
    });
    expect(judge.judge({ particulars: {}, answers: { a: ohms(1) } }).overall).toBe("undecided");
  });
});

test("a sheet of nothing but figures worked out is never complete, and never passes", () => {
  for (const formula of ["1.0", "asset.length * 1.0"]) {
    const judge = judgeOf({
      particulars: { length: { title: "Length", type: "number" } },
      properties: { x: calculated(formula), y: calculated(formula, { limits: undefined }) },
    });
    for (const answers of [{}, { x: ohms(1) }, { x: "ok" }] as Answers[])
      expect(judge.judge({ particulars: { length: 1 }, answers })).toMatchObject({
        overall: "not-evaluated",
        complete: false,
      });
  }
});
