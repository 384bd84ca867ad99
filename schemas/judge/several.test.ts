import { describe, expect, test } from "vitest";
import type { Particulars, Reading } from "../checklist/answer-types.ts";
import type { LimitDefinition, PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf } from "./testing/checklists.ts";

const ohms = (...values: readonly (number | string)[]): Reading[] =>
  values.map((value) =>
    typeof value === "number"
      ? { value, unit: "Ohm" }
      : {
          value: Number(value.slice(1)),
          unit: "Ohm",
          comparator: value.startsWith("<") ? "<" : ">",
        },
  );

const judged = (
  combine: "each" | "highest" | "lowest" | "mean",
  limits: LimitDefinition[],
  answer: unknown,
  count: number | string = 3,
  particulars: Particulars = { sockets: 3 },
) => {
  const loops: PointDefinition = {
    $ref: "#/$defs/readings",
    title: "Loops",
    quantity: { unit: "Ohm" },
    several: { count, combine },
    limits,
  };
  const judge = judgeOf({
    particulars: { sockets: { title: "Sockets", type: "integer", minimum: 0, maximum: 99 } },
    properties: { loops },
  });
  const input = { particulars, answers: { loops: answer as Reading[] } };
  const { verdict, why, bound, value } = judge.judgePoint("loops", input);
  expect(judge.judge(input).overall).toBe(verdict);
  return { verdict, code: why.code, params: why.params, bound, value };
};

describe("of several readings", () => {
  test.each([
    ["each", [1, 1, 1], "pass"],
    ["each", [1, 2, 1], "pass"],
    ["each", [1, 2.000_001, 1], "fail"],
    ["each", [1, "<2", 1], "pass"],
    ["each", [1, ">1", 1], "undecided"],
    ["each", [3, ">1", 1], "fail"],
    ["highest", [1, 2, 0], "pass"],
    ["highest", [1, 2.1, 0], "fail"],
    ["highest", ["<1", 2, 0], "pass"],
    ["highest", [">1", 0, 0], "undecided"],
    ["lowest", [9, 2, 9], "pass"],
    ["lowest", [9, 2.1, 9], "fail"],
    ["lowest", [9, "<2", 9], "pass"],
    ["lowest", [9, ">1", 9], "undecided"],
    ["mean", [1, 2, 3], "pass"],
    ["mean", [1, 2, 3.1], "fail"],
    ["mean", [0.1, 0.2, 5.7], "pass"],
  ] as const)("%s of %j against a maximum of 2: %s", (combine, values, verdict) => {
    expect(judged(combine, [{ max: 2 }], ohms(...values)).verdict).toBe(verdict);
  });

  test.each([
    ["each", [2, 3, 4], "pass"],
    ["each", [2, 3, 1.9], "fail"],
    ["highest", [0, 2, 0], "pass"],
    ["highest", [0, 1.9, 0], "fail"],
    ["highest", [0, ">2", 0], "pass"],
    ["highest", [0, "<3", 0], "undecided"],
    ["lowest", [2, 3, 4], "pass"],
    ["lowest", [1.9, 3, 4], "fail"],
    ["lowest", [">2", 3, 4], "pass"],
    ["lowest", ["<3", 3, 4], "undecided"],
  ] as const)("%s of %j against a minimum of 2: %s", (combine, values, verdict) => {
    expect(judged(combine, [{ min: 2 }], ohms(...values)).verdict).toBe(verdict);
  });

  test("a conditional pass does not settle what another reading leaves open", () => {
    const decision = { rule: "non-binary", uncertainty: 0.1 } as const;
    const least = [{ min: 2, decision }];
    const verdict = (...values: readonly (number | string)[]) =>
      judged("highest", least, ohms(...values)).verdict;
    // The highest of 2.05 and of something above 1 may lie at 2.1 or beyond, or at 2.05.
    expect(verdict(2.05, ">1", 1)).toBe("undecided");
    expect(verdict(2.05, "<1", 1)).toBe("advisory");
    expect(verdict(2.1, ">1", 1)).toBe("pass");
  });

  test("the gravest of all severities decides and names its reading", () => {
    const limits: LimitDefinition[] = [{ max: 2 }, { max: 1, severity: "advisory" }];
    expect(judged("each", limits, ohms(0.5, 1.5, 0.2))).toMatchObject({
      verdict: "advisory",
      bound: 1,
      params: { value: 1.5 },
    });
    expect(judged("each", limits, ohms(0.5, 1.5, 2.5))).toMatchObject({
      verdict: "fail",
      bound: 2,
      params: { value: 2.5 },
    });
  });

  test("a mean with a reading beyond the instrument's range is undecided", () => {
    expect(judged("mean", [{ max: 2 }], ohms(0, "<1", 0))).toMatchObject({
      verdict: "undecided",
      code: "censored-mean",
    });
  });

  test("the mean, the highest and the lowest are told; what is judged one by one has no one value", () => {
    const value = (combine: Parameters<typeof judged>[0]) =>
      judged(combine, [{ max: 9 }], ohms(0.1, 0.2, 0.3)).value;
    expect([value("mean"), value("highest"), value("lowest")]).toEqual([0.2, 0.3, 0.1]);
    expect(value("each")).toBeUndefined();
  });
});

describe("exactly as many readings as the checklist says, or undecided", () => {
  test.each([
    ["none", undefined, "not-answered"],
    ["an empty list", [], "not-answered"],
    ["one too few", ohms(0, 0), "too-few-readings"],
    ["one too many", ohms(0, 0, 0, 0), "too-many-readings"],
    ["one that is no reading", [...ohms(0, 0), 0], "not-an-answer"],
    ["one in another dimension", [...ohms(0, 0), { value: 0, unit: "m" }], "unit-not-convertible"],
    ["a reading instead of a list", ohms(0)[0], "not-an-answer"],
  ])("%s", (_, answer, code) => {
    for (const combine of ["each", "highest", "lowest", "mean"] as const)
      expect(judged(combine, [{ max: 2 }], answer)).toMatchObject({ verdict: "undecided", code });
  });

  test.each([
    [2, "too-many-readings"],
    [3, "within-max"],
    [4, "too-few-readings"],
    [undefined, "missing"],
    [0, "count-not-right"],
    [51, "count-not-right"],
  ])("a count from a particular of %s: %s", (sockets, code) => {
    const particulars: Particulars = sockets === undefined ? {} : { sockets };
    const found = judged("highest", [{ max: 2 }], ohms(0, 0, 0), "asset.sockets", particulars);
    expect(found.code).toBe(code);
    expect(found.verdict).toBe(code === "within-max" ? "pass" : "undecided");
  });
});
