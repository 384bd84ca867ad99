import { describe, expect, test } from "vitest";
import { judgeOf, type Parts, reading, row } from "./testing/checklists.ts";

const run = (parts: Parts, particulars: Record<string, number | string>, value = 1) =>
  judgeOf(parts).judgePoint("x", { particulars, answers: { x: { value, unit: "Ohm" } } });

const lead: Parts = {
  particulars: {
    length: { title: "Length", type: "number", unit: "m" },
    kind: { title: "Kind", enum: ["I", "II"] },
  },
  values: {
    per_m: {
      unit: "Ohm/m",
      table: { policy: "unique", inputs: ["asset.kind"], rules: [row(["I"], 0.1)] },
    },
    most: { unit: "mOhm", const: 1500 },
    circle: { unit: "Ohm", formula: "circle + 1.0" },
  },
  properties: { x: reading("Ohm", [{ max: "asset.length * per_m" }]) },
};
const limited = (...limits: Parameters<typeof reading>[1] & object): Parts => ({
  ...lead,
  properties: { x: reading("Ohm", limits) },
});

describe("a bound that cannot be had is undecided and says why", () => {
  test.each([
    ["a missing particular", lead, { kind: "I" }, "missing"],
    ["a table without a fitting row", lead, { length: 10, kind: "II" }, "no-rule"],
    ["a particular of the wrong type", lead, { length: "10", kind: "I" }, "wrong-type"],
    [
      "a division by zero",
      limited({ max: "1.0 / (asset.length - 10.0)" }),
      { length: 10 },
      "not-finite",
    ],
    ["a value that needs itself", limited({ max: "circle" }), {}, "cycle"],
    ["a formula that is none", limited({ max: "1 +" }), {}, "formula-refused"],
    ["an unknown name", limited({ max: "asset.constructor" }), {}, "formula-refused"],
    [
      "metres where ohms belong",
      limited({ max: "asset.length" }),
      { length: 10 },
      "unit-not-convertible",
    ],
    [
      "a limit that does not apply",
      limited({ max: 2, when: "asset.kind == 'II'" }),
      { kind: "I" },
      "no-limit-applies",
    ],
    [
      "a condition that cannot be had",
      limited({ max: 2, when: "asset.kind == 'II'" }),
      {},
      "missing",
    ],
    [
      "a condition that is a number",
      limited({ max: 2, when: "asset.length" }),
      { length: 1 },
      "wrong-type",
    ],
  ])("%s", (_, parts, particulars, code) => {
    const judged = run(parts, particulars);
    expect([judged.verdict, judged.why.code, judged.bound]).toEqual(["undecided", code, null]);
  });

  test("a failed limit beats one that cannot be had, and one that cannot beats a pass", () => {
    expect(run(limited({ max: "asset.length * per_m" }, { max: 0.5 }), {}).verdict).toBe("fail");
    expect(run(limited({ max: 5 }, { max: "asset.length * per_m" }), {}).verdict).toBe("undecided");
  });
});

test("a bound in another unit is converted, and both limits are told apart", () => {
  const judged = run(limited({ max: "most" }, { min: 0.5, basis: "maker" }), {}, 1.5);
  expect(judged).toMatchObject({ verdict: "pass", bound: 1.5 });
  expect(judged.limits).toMatchObject([
    { index: 0, kind: "max", bound: 1.5 },
    { index: 1, kind: "min", bound: 0.5, basis: "maker" },
  ]);
});

test("readings exactly on a computed limit pass, where plain comparison of doubles fails some", () => {
  const judge = judgeOf(lead);
  let plain = 0;
  let ours = 0;
  for (let tenths = 1; tenths <= 1000; tenths++) {
    const length = tenths / 10;
    // The limit as a person would write it: a tenth of the length, to the decimal.
    const value = Number(`${tenths}e-2`);
    const particulars = { length, kind: "I" };
    if (!(value <= length * 0.1)) plain += 1;
    const judged = judge.judgePoint("x", { particulars, answers: { x: { value, unit: "Ohm" } } });
    if (judged.verdict !== "pass") ours += 1;
  }
  expect(ours).toBe(0);
  expect(plain).toBeGreaterThan(0);
});
