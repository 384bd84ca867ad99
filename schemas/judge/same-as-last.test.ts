import { describe, expect, test } from "vitest";
import type { Answer, Answers, Particulars } from "../checklist/answer-types.ts";
import type { LimitDefinition, PointDefinition } from "../checklist/meta-schema.ts";
import { judgeOf, reading } from "./testing/checklists.ts";

const within = (
  tolerance: number | string,
  whenNone?: "undecided" | "not-applied",
): LimitDefinition => ({
  sameAsLast: { within: tolerance, ...(whenNone === undefined ? {} : { whenNone }) },
});
const mm = (value: number, more: object = {}): Answer => ({ value, unit: "mm", ...more }) as Answer;

const judged = (
  point: PointDefinition,
  now: Answer,
  last: Answer | undefined,
  particulars: Particulars = {},
) => {
  const judge = judgeOf({
    particulars: { slack: { title: "Slack", type: "number", unit: "mm" } },
    properties: { x: point },
  });
  const previous: Answers | undefined = last === undefined ? undefined : { x: last };
  const input = { particulars, answers: { x: now }, ...(previous && { previous }) };
  return judge.judgePoint("x", input);
};
const codeOf = ({ verdict, why }: ReturnType<typeof judged>) => [verdict, why.code];

test("a tolerance beyond all numbers passes nothing", () => {
  const point = reading("mm", [within(Number.MAX_VALUE)]);
  expect(codeOf(judged(point, mm(1), mm(Number.MAX_VALUE)))).toEqual(["undecided", "not-finite"]);
});

describe("the same as last time", () => {
  const point = reading("mm", [within(0.3)]);

  test.each([
    [10.3, "pass", "same-as-last"],
    [9.7, "pass", "same-as-last"],
    [10.300_001, "fail", "not-same-as-last"],
    [9.699_999, "fail", "not-same-as-last"],
  ])("10 within 0.3 of %d: %s", (last, verdict, code) => {
    expect(codeOf(judged(point, mm(10), mm(last)))).toEqual([verdict, code]);
    // What is written in another unit is the same reading.
    const other = { value: last / 10, unit: "cm" };
    expect(codeOf(judged(point, mm(10), other))).toEqual([verdict, code]);
  });

  test.each([
    ["<", 9.7, "fail"],
    ["<=", 9.7, "undecided"],
    ["<", 9.8, "undecided"],
    [">", 10.3, "fail"],
    [">=", 10.3, "undecided"],
  ])("now %s%d against 10: %s", (comparator, value, verdict) => {
    expect(judged(point, mm(value, { comparator }), mm(10)).verdict).toBe(verdict);
  });

  test.each([
    ["no inspection before", undefined],
    ["none of this point", null],
    ["an absence", { absent: { reason: "no-access" } }],
    ["a reading in another dimension", { value: 10, unit: "s" }],
    ["words", "10"],
  ] as const)("is undecided with %s, unless the checklist says otherwise", (_, last) => {
    const before = last as Answer | undefined;
    expect(codeOf(judged(point, mm(10), before))).toEqual(["undecided", "no-last"]);
    const lenient = reading("mm", [within(0.3, "not-applied"), { max: 20 }]);
    expect(codeOf(judged(lenient, mm(10), before))).toEqual(["pass", "within-max"]);
    expect(codeOf(judged(lenient, mm(21), before))).toEqual(["fail", "above-max"]);
    // A limit that does not apply is no limit that was met.
    const alone = reading("mm", [within(0.3, "not-applied")]);
    expect(codeOf(judged(alone, mm(10), before))).toEqual(["undecided", "no-limit-applies"]);
  });

  test("a time before beyond the instrument's range is compared with nothing", () => {
    const last = mm(10, { comparator: ">" });
    expect(codeOf(judged(point, mm(10), last))).toEqual(["undecided", "no-last"]);
  });

  test("a reading of this time that is missing is undecided, whatever the time before says", () => {
    const judge = judgeOf({ properties: { x: point } });
    const input = { particulars: {}, answers: {}, previous: { x: mm(10) } };
    expect(judge.judge(input)).toMatchObject({ overall: "undecided", complete: false });
  });

  test("the tolerance may be a formula; one that is missing or negative never passes", () => {
    const formula = reading("mm", [within("asset.slack * 2")]);
    expect(judged(formula, mm(10), mm(10.4), { slack: 0.2 }).verdict).toBe("pass");
    expect(judged(formula, mm(10), mm(10.5), { slack: 0.2 }).verdict).toBe("fail");
    expect(judged(formula, mm(10), mm(10)).verdict).toBe("undecided");
    expect(judged(formula, mm(10), mm(10), { slack: -1 }).verdict).not.toBe("pass");
  });

  test("temperatures differ by steps: 1 K is 1.8 degrees Fahrenheit, not 33.8", () => {
    const warm = reading("Cel", [within(1)]);
    const fahrenheit = (value: number): Answer => ({ value, unit: "[degF]" });
    const last: Answer = { value: 50, unit: "Cel" };
    expect(judged(warm, fahrenheit(123.8), last).verdict).toBe("pass");
    expect(judged(warm, fahrenheit(123.9), last).verdict).toBe("fail");
  });

  test("counts, grades, results and what is worked out are compared as well", () => {
    const count: PointDefinition = { $ref: "#/$defs/count", title: "N", limits: [within(1)] };
    expect([judged(count, 4, 5).verdict, judged(count, 4, 6).verdict]).toEqual(["pass", "fail"]);
    const sample: PointDefinition = {
      $ref: "#/$defs/sample",
      title: "Water",
      quantity: { unit: "mm" },
      limits: [within(0.3)],
    };
    const result = (value: number): Answer => ({ sample: "A 1", result: { value, unit: "mm" } });
    expect(judged(sample, result(10), result(10.3)).verdict).toBe("pass");
    expect(judged(sample, result(10), { sample: "A 0" }).verdict).toBe("undecided");
    const judge = judgeOf({
      properties: {
        x: reading("mm"),
        twice: {
          $ref: "#/$defs/calculated",
          title: "Twice",
          quantity: { unit: "mm" },
          calculate: "answers.x * 2",
          limits: [within(0.3)],
        },
      },
    });
    const overall = (value: number, previous: Answers) =>
      judge.judge({ particulars: {}, answers: { x: mm(value) }, previous }).overall;
    expect(overall(10, { x: mm(10.1) })).toBe("pass");
    expect(overall(10, { x: mm(10.2) })).toBe("fail");
    // What somebody wrote for it then is nobody's reading either.
    expect(overall(10, { twice: mm(20) })).toBe("undecided");
  });
});
