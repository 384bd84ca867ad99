import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert, unitOf } from "../units/units.ts";
import { isFailure, type NameTypes } from "./engine-type.ts";
import { createFormulaEngine } from "./index.ts";
import { contextOf } from "./testing/context-of.ts";
import {
  PLAIN_NAMES,
  randomGiven,
  randomNumber,
  randomText,
  randomTruth,
} from "./testing/random-formulas.ts";

const engine = createFormulaEngine();
const compiled = (source: string, names: NameTypes) => {
  const result = engine.compile(source, names);
  if (!result.ok) throw new Error(`${source}: ${JSON.stringify(result.problems)}`);
  return result.value;
};

describe("taking a value away never changes an outcome into another: it stays, or fails", () => {
  it.each([
    ["truths", randomTruth],
    ["numbers", randomNumber],
    ["texts", randomText],
  ] as const)("of %s", (_, formulas) => {
    const counts = { stayed: 0, failed: 0 };
    const property = fc.property(
      formulas,
      randomGiven,
      fc.constantFrom(...PLAIN_NAMES.keys()),
      (source, given, gone) => {
        const formula = compiled(source, PLAIN_NAMES);
        const before = formula.evaluate(contextOf(given));
        const after = formula.evaluate(contextOf(new Map([...given, [gone, undefined]])));
        counts[isFailure(after) ? "failed" : "stayed"] += 1;
        // What failed before fails still: nothing is made up for what is missing.
        if (!isFailure(after)) expect(after).toBe(before);
      },
    );
    fc.assert(property, { seed: 31, numRuns: 5000 });
    expect(Math.min(counts.stayed, counts.failed)).toBeGreaterThan(500);
  });
});

/** The units names are declared in: those of the checklist, and others of the same dimensions. */
const DECLARED: Readonly<Record<string, string>> = {
  "asset.length": "m",
  "asset.gap": "mm",
  joints: "Ohm",
  "answers.bond": "mOhm",
  per_metre: "Ohm/m",
  "answers.flow": "Cel",
  "answers.back": "Cel",
};
const OTHERS: Readonly<Record<string, readonly string[]>> = {
  "asset.length": ["cm", "km", "[ft_i]", "mm"],
  "asset.gap": ["um", "cm", "[in_i]"],
  joints: ["mOhm", "kOhm"],
  "answers.bond": ["Ohm", "uOhm"],
  per_metre: ["mOhm/m", "Ohm/km", "Ohm/[ft_i]"],
  "answers.flow": ["[degF]"],
  "answers.back": ["[degF]"],
};
const typesOf = (units: Readonly<Record<string, string>>): NameTypes =>
  new Map(
    Object.entries(units).map(([name, code]) => [name, { type: "number", unit: unitOf(code) }]),
  );

/**
 * Formulas in which every number is a quantity or a factor. A bare number that is added, or a
 * number that is rounded, is one in the unit it stands in: there the unit is part of the formula.
 */
const quantities = fc.letrec<
  Record<"length" | "gap" | "ohms" | "bond" | "factor" | "truth", string>
>((tie) => {
  const of = (name: string, own: fc.Arbitrary<string>, ...more: fc.Arbitrary<string>[]) =>
    fc.oneof(
      { maxDepth: 4, depthIdentifier: "quantity" },
      fc.constant(name),
      fc.tuple(own, own).map(([a, b]) => `(${a} + ${b})`),
      fc.tuple(own, own).map(([a, b]) => `max(${a}, ${b})`),
      fc.tuple(own, own).map(([a, b]) => `min(${a}, abs(${b}))`),
      fc.tuple(own, tie("factor")).map(([a, k]) => `${a} * ${k}`),
      fc.tuple(own, tie("factor")).map(([a, k]) => `${a} / ${k}`),
      fc.tuple(tie("truth"), own, own).map(([t, a, b]) => `(${t} ? ${a} : ${b})`),
      ...more,
    );
  const less = (own: fc.Arbitrary<string>) =>
    fc.tuple(own, fc.constantFrom("<", ">="), own).map(([a, op, b]) => `(${a} ${op} ${b})`);
  const run = fc.tuple(tie("length"), fc.constant("per_metre"));
  return {
    length: of("asset.length", tie("length")),
    gap: of("asset.gap", tie("gap")),
    ohms: of(
      "joints",
      tie("ohms"),
      run.map(([a, b]) => `${a} * ${b}`),
    ),
    bond: of("answers.bond", tie("bond")),
    factor: fc.oneof(
      { maxDepth: 4, depthIdentifier: "quantity" },
      fc.constantFrom("2", "0.5", "3"),
      fc.tuple(tie("length"), tie("length")).map(([a, b]) => `(${a} / (${b}))`),
    ),
    truth: fc.oneof(less(tie("length")), less(tie("ohms")), less(tie("bond"))),
  };
});

const quantity = fc
  .oneof(
    ...[quantities.length, quantities.gap, quantities.ohms, quantities.bond, quantities.factor],
  )
  .filter((text) => text.length <= 500);
const temperature = fc
  .array(fc.constantFrom("answers.flow", "answers.back"), { minLength: 2, maxLength: 4 })
  .chain(([a = "", b = "", ...more]) =>
    fc.constantFrom(
      `${a} - ${b}`,
      `(${[a, b, ...more].join(" + ")}) / ${2 + more.length}`,
      `max(${[a, b, ...more].join(", ")})`,
      `(${a} > ${b} ? ${a} : ${b}) - (${b} - ${a})`,
      `abs(${a} - ${b}) * 0.5`,
    ),
  );
const inUnits = fc.record(
  Object.fromEntries(
    Object.entries(OTHERS).map(([name, codes]) => [name, fc.constantFrom(...codes)]),
  ),
);
const amounts = fc.record(
  Object.fromEntries(
    Object.keys(DECLARED).map((name) => [name, fc.integer({ min: 1, max: 5000 })]),
  ),
);

describe("converting every input to another unit gives the same bound to 12 digits", () => {
  it.each([
    ["quantities and factors", quantity, 41, 0],
    // Differences lose the digits of what they are taken from, so digits count from its size.
    ["temperatures", temperature, 42, 5000],
  ] as const)("for %s", (_, formulas, seed, least) => {
    let compared = 0;
    const property = fc.property(formulas, inUnits, amounts, (source, units, given) => {
      const others = engine.compile(source, typesOf(units));
      // Ohm may not be added to cm × mOhm/m, which is of another size: other units will do.
      if (!others.ok) {
        expect(others.problems.map(({ code }) => code)).toContain("unit-mismatch");
        return;
      }
      const first = compiled(source, typesOf(DECLARED));
      const moved = Object.entries(given).map(
        ([name, value]) => [name, convert(value, DECLARED[name] ?? "", units[name] ?? "")] as const,
      );
      const bound = first.evaluate(contextOf(new Map(Object.entries(given))));
      const other = others.value.evaluate(contextOf(new Map(moved)));
      compared += 1;
      const [from, to] = [others.value.unit, first.unit];
      if (typeof bound !== "number" || typeof other !== "number" || !from || !to) {
        expect([bound, from]).toEqual([other, to]);
        return;
      }
      const base = (other * from.num + from.zero) / from.den;
      const back = (base * to.den - to.zero) / to.num;
      const size = Math.max(Math.abs(bound), least);
      expect(Math.abs(back - bound)).toBeLessThanOrEqual(size * 1e-12);
    });
    fc.assert(property, { seed, numRuns: 4000 });
    expect(compared).toBeGreaterThan(3000);
  });
});
