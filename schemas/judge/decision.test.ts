import { describe, expect, test } from "vitest";
import type { Answer } from "../checklist/answer-types.ts";
import type { DecisionRule, LimitDefinition } from "../checklist/meta-schema.ts";
import { judgeOf, judgeOne, reading } from "./testing/checklists.ts";

// The rules and their guard bands: ILAC-G8:09/2019, clauses 4.2.1 to 4.2.3 (from memory).

const limit = (rule: DecisionRule, more: Partial<LimitDefinition> = {}): LimitDefinition => ({
  max: 2,
  decision: { rule, uncertainty: 0.1 },
  ...more,
});
const ohms = (value: number, comparator?: "<" | "<=" | ">" | ">="): Answer => ({
  value,
  unit: "Ohm",
  ...(comparator === undefined ? {} : { comparator }),
});
const judged = (limits: LimitDefinition, answer: Answer) =>
  judgeOne(reading("Ohm", [limits]), answer);
const verdictOf = (limits: LimitDefinition, value: number) => judged(limits, ohms(value)).verdict;

describe("guarded acceptance passes only what is inside by the guard band", () => {
  test.each([
    [1.899_999, "pass"],
    [1.9, "pass"],
    [1.900_001, "fail"],
    [2, "fail"],
    [2.1, "fail"],
  ])("%d Ohm against 2 Ohm, U = 0.1 Ohm: %s", (value, verdict) => {
    const found = judged(limit("guarded-acceptance"), ohms(value));
    expect(found.verdict).toBe(verdict);
    expect(found.limits[0]).toMatchObject({ bound: 2, acceptance: 1.9 });
    expect(found.bound).toBe(2);
  });

  test("a minimum moves up, and an exclusive bound stays exclusive", () => {
    const least = limit("guarded-acceptance", { max: undefined, min: 2 });
    expect([verdictOf(least, 2.1), verdictOf(least, 2.099_999)]).toEqual(["pass", "fail"]);
    const below = limit("guarded-acceptance", { max: undefined, exclusiveMax: 2 });
    expect([verdictOf(below, 1.899_999), verdictOf(below, 1.9)]).toEqual(["pass", "fail"]);
  });

  test.each([
    ["<", 1.9, "pass"],
    ["<", 2, "undecided"],
    [">", 1.9, "fail"],
    [">", 1, "undecided"],
    [">=", 1.9, "undecided"],
  ] as const)("a reading %s%d Ohm is %s", (comparator, value, verdict) => {
    expect(judged(limit("guarded-acceptance"), ohms(value, comparator)).verdict).toBe(verdict);
  });
});

test.each([
  [2, "pass"],
  [2.1, "pass"],
  [2.100_001, "fail"],
])(
  "guarded rejection fails only what is outside by the guard band: %d Ohm: %s",
  (value, verdict) => {
    const found = judged(limit("guarded-rejection"), ohms(value));
    expect(found.verdict).toBe(verdict);
    expect(found.limits[0]).toMatchObject({ bound: 2, acceptance: 2.1 });
  },
);

describe("the non-binary rule has four outcomes", () => {
  test.each([
    [1.9, "pass", "pass"],
    [1.900_001, "conditional-pass", "advisory"],
    [2, "conditional-pass", "advisory"],
    [2.000_001, "conditional-fail", "fail"],
    [2.1, "conditional-fail", "fail"],
    [2.100_001, "fail", "fail"],
  ])("%d Ohm: %s, which is %s", (value, conformity, verdict) => {
    const found = judged(limit("non-binary"), ohms(value));
    expect([found.limits[0]?.conformity, found.verdict]).toEqual([conformity, verdict]);
  });

  test("of an advisory limit nothing fails", () => {
    const mild = limit("non-binary", { severity: "advisory" });
    expect([1.9, 2, 2.05, 3].map((value) => verdictOf(mild, value))).toEqual([
      "pass",
      "advisory",
      "advisory",
      "advisory",
    ]);
  });

  test.each([
    ["<", 1.9, "pass", "pass"],
    ["<", 2, "undecided", undefined],
    [">", 2, "undecided", undefined],
    [">", 2.1, "fail", "fail"],
  ] as const)("a reading %s%d Ohm is %s", (comparator, value, verdict, conformity) => {
    const found = judged(limit("non-binary"), ohms(value, comparator));
    expect([found.verdict, found.limits[0]?.conformity]).toEqual([verdict, conformity]);
  });
});

describe("the uncertainty", () => {
  const rules = ["guarded-acceptance", "guarded-rejection", "non-binary"] as const;

  test.each(rules)("of %s, when missing, negative or not finite, leaves nothing passed", (rule) => {
    const of = (uncertainty: number | string | undefined) => {
      const decision = uncertainty === undefined ? { rule } : { rule, uncertainty };
      const { verdict, why } = judged({ max: 2, decision }, ohms(0));
      return [verdict, why.code];
    };
    expect(of(undefined)).toEqual(["undecided", "uncertainty-missing"]);
    expect(of(-0.1)).toEqual(["undecided", "uncertainty-negative"]);
    expect(of(Number.POSITIVE_INFINITY)).toEqual(["undecided", "not-finite"]);
    expect(of(Number.NaN)).toEqual(["undecided", "not-finite"]);
    expect(of("answers.stranger")[0]).toBe("undecided");
    expect(of("1.0 / 0.0")[0]).toBe("undecided");
  });

  test.each(rules)("of nothing makes %s the plain comparison", (rule) => {
    const sure = { max: 2, decision: { rule, uncertainty: 0 } };
    expect([verdictOf(sure, 2), verdictOf(sure, 2.000_001)]).toEqual(["pass", "fail"]);
  });

  test("is not asked for by the simple rule", () => {
    expect(verdictOf({ max: 2, decision: { rule: "simple" } }, 2)).toBe("pass");
  });

  test("is multiplied by the guard factor", () => {
    const wide = { rule: "guarded-acceptance", uncertainty: 0.1, guardFactor: 2 } as const;
    const found = judged({ max: 2, decision: wide }, ohms(1.8));
    expect([found.verdict, found.limits[0]?.acceptance]).toEqual(["pass", 1.8]);
    expect(verdictOf({ max: 2, decision: wide }, 1.800_001)).toBe("fail");
  });

  const judgeWith = (uncertainty: string) =>
    judgeOf({
      particulars: { share: { title: "Share", type: "number", unit: "%" } },
      properties: {
        x: reading("Ohm", [{ max: 2, decision: { rule: "guarded-acceptance", uncertainty } }]),
      },
    });

  test("may be a share of the reading: 2 % of it and 0.02 Ohm", () => {
    const judge = judgeWith("answers.x * 0.02 + 0.02");
    const at = (value: number) =>
      judge.judge({ particulars: {}, answers: { x: ohms(value) } }).overall;
    // 1.02 x + 0.02 ≤ 2 up to 1.941176…
    expect([at(1.94), at(1.941_176), at(1.941_177), at(2)]).toEqual([
      "pass",
      "pass",
      "fail",
      "fail",
    ]);
    // A reading that is no one number has no share of it.
    expect(judge.judge({ particulars: {}, answers: { x: ohms(0, "<") } }).overall).toBe(
      "undecided",
    );
  });

  test("may come from a particular; without it nothing is decided", () => {
    const judge = judgeOf({
      particulars: { error: { title: "Error", type: "number", unit: "mOhm", minimum: 0 } },
      properties: {
        x: reading("Ohm", [
          { max: 2, decision: { rule: "guarded-acceptance", uncertainty: "asset.error" } },
        ]),
      },
    });
    const at = (value: number, particulars: { error?: number }) =>
      judge.judge({ particulars, answers: { x: ohms(value) } }).overall;
    expect([at(1.9, { error: 100 }), at(1.900_001, { error: 100 })]).toEqual(["pass", "fail"]);
    expect([at(0, {}), at(0, { error: -1 })]).toEqual(["undecided", "undecided"]);
  });
});

test("a range narrowed to nothing by its guard bands passes nothing", () => {
  const narrow: LimitDefinition = {
    min: 1,
    max: 2,
    decision: { rule: "guarded-acceptance", uncertainty: 0.6 },
  };
  expect([1, 1.4, 1.5, 1.6, 2].map((value) => verdictOf(narrow, value))).toEqual(
    Array.from({ length: 5 }, () => "fail"),
  );
});

test("of several readings each is held against the guarded bound", () => {
  const point = (combine: "each" | "highest" | "mean") => ({
    ...reading("Ohm", [limit("guarded-acceptance")]),
    $ref: "#/$defs/readings" as const,
    several: { count: 2, combine },
  });
  for (const combine of ["each", "highest", "mean"] as const) {
    expect(judgeOne(point(combine), [ohms(1.9), ohms(1.9)] as Answer).verdict).toBe("pass");
    expect(judgeOne(point(combine), [ohms(1.9), ohms(1.91)] as Answer).verdict).toBe("fail");
  }
});
