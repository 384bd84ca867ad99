import { describe, expect, it } from "vitest";
import { unitOf } from "../units/units.ts";
import { compileFormula, plainName, wordsIn } from "./compile.ts";
import type { Failure, NameType, Scalar } from "./engine-type.ts";
import { createFormulaEngine } from "./index.ts";

const engine = createFormulaEngine();
const number = (unit?: string): NameType => ({
  type: "number",
  unit: unit ? unitOf(unit) : undefined,
});
const NAMES = new Map<string, NameType>([
  ["asset.length", number("m")],
  ["asset.class", { type: "string", options: ["I", "II"] }],
  ["asset.wet", { type: "boolean" }],
  ["answers.flow", number("Cel")],
  ["answers.back", number("Cel")],
  ["joints", number("Ohm")],
  ["spare", number("mOhm")],
  ["r_per_m", number("Ohm/m")],
  ["n", number()],
]);
type Part = Record<string, Scalar | Failure | undefined>;
const context = (asset: Part = {}, values: Part = {}, answers: Part = {}) => ({
  asset: Object.assign(Object.create(null), asset),
  answers: Object.assign(Object.create(null), answers),
  values: Object.assign(Object.create(null), values),
});
const FULL = context(
  { length: 10, class: "I", wet: true },
  { joints: 0.1, spare: 1, r_per_m: 0.0133, n: 3 },
  { flow: 60, back: 50 },
);
const compiled = (source: string) => {
  const result = engine.compile(source, NAMES);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};
const refused = (source: string, expected = {}) => {
  const result = engine.compile(source, NAMES, expected);
  return result.ok ? null : result.problems[0];
};

describe("values", () => {
  it.each([
    ["7 / 2", 3.5],
    ["joints + asset.length * r_per_m", 0.233],
    ["round(2.5) + round(-2.5) + round(0.145 * 100)", 15],
    ["min(n, 1) + max(n, 1) + abs(-n)", 7],
    ["asset.wet ? n : -n", 3],
    ["asset.class in ['II', 'I'] && !(n > 3)", true],
    ['asset.class != "I"', false],
    ["n >= 3 == asset.wet", true],
    ["0x10 + 1e1", 26],
    // All comparisons bind alike, from the left (cel-spec, "Syntax").
    ["false == true in [true, false]", true],
    ["false == (true in [true, false])", false],
    ["true == (n > 1) in [false] == false", true],
  ])("%s is %j", (source, expected) => {
    expect(compiled(source).evaluate(FULL)).toBe(expected);
  });

  it("the working shows the numbers in place of the names", () => {
    const working = (source: string) => compiled(source).working(FULL);
    expect(working("joints + asset.length * r_per_m")).toBe("0.1 + 10 × 0.0133");
    expect(working("(joints + 1) / 2 - (1 - n)")).toBe("(0.1 + 1) ÷ 2 - (1 - 3)");
    expect(working("asset.wet ? n * 2 : 0")).toBe("3 × 2");
    expect(working("max(n, 1)")).toBe("max(3, 1)");
  });
});

describe("failures", () => {
  it.each([
    ["n / (n - 3)", "not-finite"],
    ["1 / (1 / (n - 3))", "not-finite"],
    ["1e308 * 10", "not-finite"],
  ])("%s is never a number: every step has to be finite", (source, code) => {
    expect(compiled(source).evaluate(FULL)).toMatchObject({ code });
  });

  it("what is missing is a failure that names it, unless the other side decides alone", () => {
    const evaluate = (source: string, asset = {}) => compiled(source).evaluate(context(asset));
    const missing = { code: "missing", params: { name: "asset.wet" } };
    expect(evaluate("asset.wet && asset.class == 'I'", { class: "I" })).toEqual(missing);
    expect(evaluate("asset.class == 'I' && asset.wet", { class: "II" })).toBe(false);
    expect(evaluate("asset.wet && asset.class == 'I'", { class: "II" })).toBe(false);
    expect(evaluate("asset.wet || asset.class == 'I'", { class: "I" })).toBe(true);
    expect(evaluate("asset.wet ? 1 : 1")).toEqual(missing);
    expect(evaluate("asset.class in ['I']")).toMatchObject({ code: "missing" });
  });

  it("a value of another type than declared, or inherited, is a failure", () => {
    const length = (value: unknown) =>
      compiled("asset.length").evaluate(context({ length: value as Scalar }));
    expect(length("10")).toMatchObject({ code: "wrong-type" });
    expect(length(Number.NaN)).toMatchObject({ code: "wrong-type" });
    expect(length(null)).toMatchObject({ code: "missing" });
    const names = new Map([["asset.constructor", number()]]);
    const result = compileFormula("asset.constructor", names, undefined, undefined);
    expect(
      result.ok && result.value.evaluate({ asset: {}, answers: {}, values: {} }),
    ).toMatchObject({ code: "missing" });
  });
});

describe("design time", () => {
  it.each([
    ["joints + asset.lenght", "unknown-name", { nearest: "asset.length", start: 9, end: 21 }],
    ["joints + asset.length", "unit-mismatch", { expected: "Ohm", found: "m" }],
    ["joints + spare", "unit-mismatch", { expected: "Ohm", found: "mOhm" }],
    ["joints > asset.length", "unit-mismatch", { expected: "Ohm", found: "m" }],
    ["max(joints, asset.length)", "unit-mismatch", { expected: "Ohm", found: "m" }],
    ["asset.length / asset.length + joints", "unit-mismatch", { expected: "1", found: "Ohm" }],
    ["answers.flow * asset.length", "unit-mismatch", { expected: "Cel", found: "m" }],
    ["asset.class == 'III'", "not-an-option", { value: "III" }],
    ["asset.class + 'I'", "type-mismatch", { expected: "number", found: "string" }],
    ["asset.wet && n", "type-mismatch", { expected: "boolean", found: "number", start: 13 }],
    ["1 +", "formula-syntax", { start: 3 }],
    ["has(asset.wet)", "formula-not-allowed", { construct: "has()" }],
    ["asset['wet']", "formula-not-allowed", { construct: "[]" }],
    ["[1].all(x, x > 0)", "formula-not-allowed", {}],
    ["asset.class.size()", "formula-not-allowed", {}],
    ["asset.wet == n < 5", "type-mismatch", { expected: "boolean", found: "number" }],
    ["n % 2", "formula-not-allowed", { construct: "%" }],
    ["null == n", "formula-not-allowed", { construct: "null" }],
    ["r'I' == asset.class", "formula-not-allowed", { construct: "string-prefix" }],
    [`${"9".repeat(400)} + n`, "formula-not-allowed", { construct: "number-too-large" }],
    ["namespace + 1", "reserved-word", { word: "namespace", start: 0, end: 9 }],
    [`n${" ".repeat(500)}`, "formula-too-long", { limit: 500 }],
    [`${"(".repeat(30)}n${")".repeat(30)}`, "formula-too-complex", { depth: 24 }],
    [`n${"+n".repeat(110)}`, "formula-too-complex", { nodes: 200 }],
  ])("%s is refused: %s", (source, code, params) => {
    expect(refused(source)).toMatchObject({ code, params });
  });

  it("temperatures differ by kelvins, and take kelvins", () => {
    expect(compiled("answers.flow - answers.back").unit?.code).toBe("K");
    expect(compiled("answers.flow - 5").unit?.code).toBe("Cel");
    expect(refused("answers.flow - answers.back", { unit: unitOf("Cel") })?.code).toBe(
      "unit-mismatch",
    );
  });

  it("a result of another size of unit will do, of another dimension will not", () => {
    expect(refused("spare", { unit: unitOf("Ohm") })).toBeNull();
    expect(refused("asset.length * 0.1", { unit: unitOf("Ohm") })?.code).toBe("unit-mismatch");
  });

  it("a plain name needs no engine", () => {
    expect(plainName(" asset.length ")).toBe("asset.length");
    expect([plainName("true"), plainName("a.b"), plainName("a + b")]).toEqual([null, null, null]);
    expect(wordsIn("joints + asset.length == 'n' ? \"r_per_m\" : x")).toEqual([
      "joints",
      "asset.length",
      "x",
    ]);
  });
});
