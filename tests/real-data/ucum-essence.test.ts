import { printUnit } from "@roundbook/runner/form";
import { roundSignificant, UNIT_CODES, unitOf } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { ExpressionReader, type Quantity } from "./ucum-expression.ts";
import { type EssenceUnit, essence } from "./ucum-files.ts";

// The definitions of UCUM 2.2 (17 June 2024), under its own licence, read in place.
const definitions = essence();

/** Our dimensions in the base units of UCUM: it takes the coulomb for the ampere, the gram for the kilogram. */
const BASES: readonly (readonly [string, number][])[] = [
  [["m", 1]],
  [["g", 1]],
  [["s", 1]],
  [
    ["C", 1],
    ["s", -1],
  ],
  [["K", 1]],
  [["cd", 1]],
  [["rad", 1]],
];

const inBases = (code: string): Quantity => {
  const unit = unitOf(code);
  if (!unit) throw new Error(`${code} is no unit`);
  const exponents = new Map<string, number>();
  for (const [axis, bases] of BASES.entries())
    for (const [base, times] of bases)
      exponents.set(base, (exponents.get(base) ?? 0) + times * (unit.dimension[axis] ?? 0));
  const grams = 1000 ** (unit.dimension[1] ?? 0);
  const factor = (unit.num / unit.den) * grams;
  return { factor, exponents: new Map([...exponents].filter(([, exponent]) => exponent !== 0)) };
};

const sorted = (quantity: Quantity | null) =>
  quantity && {
    factor: roundSignificant(quantity.factor),
    exponents: [...quantity.exponents].sort(([a], [b]) => (a < b ? -1 : 1)),
  };

/**
 * What we hold to be a quantity of its own. UCUM counts colonies and turbidity as plain numbers,
 * pH as the logarithm of a concentration, sound pressure level as that of a pressure.
 */
const OWN = ["[CFU]", "[pH]", "[NTU]", "dB[SPL]", "[CFU]/L", "[CFU]/mL"];

describe.skipIf(definitions === null)("our units by the definitions of UCUM", () => {
  const { units, prefixes } = definitions ?? { units: new Map(), prefixes: new Map() };
  const reader = new ExpressionReader({ units, prefixes });
  const unit = (code: string): EssenceUnit | undefined => units.get(code);

  test("all 24 prefixes and 312 units of the file are read, and every one comes down to base units", () => {
    expect([prefixes.size, units.size]).toEqual([24, 312]);
    expect([...units.keys()].filter((code) => reader.read(code) === null)).toEqual([]);
  });

  test.each(UNIT_CODES.filter((code) => !OWN.includes(code)))(
    "%s has the dimension and the size of its definition",
    (code) => {
      expect(sorted(inBases(code))).toEqual(sorted(reader.read(code)));
    },
  );

  test("quantities that convert to nothing else are the arbitrary and special ones, and turbidity", () => {
    expect([unit("[CFU]")?.isArbitrary, unit("[pH]")?.isSpecial]).toEqual([true, true]);
    expect([unit("B[SPL]")?.isSpecial, unit("[NTU]")?.of]).toEqual([true, "1"]);
    const special = UNIT_CODES.filter((code) => unit(code)?.isSpecial || unit(code)?.isArbitrary);
    expect(special).toEqual(["Cel", "[degF]", "[CFU]", "[pH]"]);
  });

  test("the two scales with a zero of their own have it where UCUM §22 puts it", () => {
    // Cel: K − 273.15; degF: K × 9/5 − 459.67.
    const zero = (code: string) => (unitOf(code)?.zero ?? 0) / (unitOf(code)?.den ?? 1);
    expect(zero("Cel")).toBe(273.15);
    expect(roundSignificant(zero("[degF]"))).toBe(roundSignificant((459.67 * 5) / 9));
    expect(UNIT_CODES.filter((code) => unitOf(code)?.zero !== 0)).toEqual(["Cel", "[degF]"]);
  });

  /** Words for spans of time, which people do not read as `a`; colonies as laboratories write them. */
  const PRINTED = [
    "wk: wk, ours week",
    "mo: mo, ours month",
    "a: a, ours year",
    "[CFU]: CFU, ours cfu",
  ];

  test("units are printed with the sign the file gives, but for four", () => {
    const other = UNIT_CODES.flatMap((code) => {
      const sign = unit(code)?.print ?? "";
      return sign === "" || sign === printUnit(code)
        ? []
        : [`${code}: ${sign}, ours ${printUnit(code)}`];
    });
    expect(other).toEqual(PRINTED);
  });
});
