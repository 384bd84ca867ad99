import { roundSignificant } from "../shared/significant.ts";
import { COMPOUND_CODES, SIMPLE_UNITS } from "./table.ts";
import { sameDimension, type Unit } from "./unit.ts";

const compound = (code: string, left: Unit, right: Unit, sign: 1 | -1): Unit | undefined => {
  // A product with a scale that has its own zero means nothing: twice 10 °C is not 20 °C.
  if (left.zero !== 0 || right.zero !== 0) return undefined;
  return {
    code,
    num: left.num * (sign === 1 ? right.num : right.den),
    den: left.den * (sign === 1 ? right.den : right.num),
    zero: 0,
    dimension: left.dimension.map((e, axis) => e + sign * (right.dimension[axis] ?? 0)),
  };
};

export const multiplyUnits = (a: Unit, b: Unit): Unit | undefined =>
  named(compound(`${a.code}.${b.code}`, a, b, 1));
export const divideUnits = (a: Unit, b: Unit): Unit | undefined =>
  named(compound(`${a.code}/${b.code}`, a, b, -1));

/** Same dimension, same size and same zero: numbers in either are the same numbers. */
export const sameUnit = (a: Unit, b: Unit): boolean =>
  sameDimension(a, b) &&
  roundSignificant((a.num * b.den) / (a.den * b.num)) === 1 &&
  a.zero * b.den === b.zero * a.den;

/**
 * Whether a result in one unit does where the other is needed: mOhm for Ohm, [degF] for Cel. A
 * difference of temperatures (K) is no temperature (Cel): converting it would take 273.15 from it.
 */
export const fitsUnit = (found: Unit, needed: Unit): boolean =>
  sameUnit(found, needed) ||
  (sameDimension(found, needed) && (found.zero === 0) === (needed.zero === 0));

/** What a difference of two readings on a scale with its own zero is measured in: K for Cel. */
export const differenceUnit = (unit: Unit): Unit =>
  unit.zero === 0 ? unit : (named({ ...unit, code: `${unit.code} difference`, zero: 0 }) ?? unit);

const split = (code: string): Unit | undefined => {
  const at = code.search(/[./]/);
  if (at < 1) return undefined;
  const left = SIMPLE_UNITS.get(code.slice(0, at));
  const right = SIMPLE_UNITS.get(code.slice(at + 1));
  return left && right && compound(code, left, right, code[at] === "." ? 1 : -1);
};

/** The unit of a UCUM code: a simple one, or one level of `a/b` or `a.b`. */
export const unitOf = (code: string): Unit | undefined => SIMPLE_UNITS.get(code) ?? split(code);

/** Codes to offer in a menu; `unitOf` knows more compounds. */
export const UNIT_CODES: readonly string[] = [...SIMPLE_UNITS.keys(), ...COMPOUND_CODES];

/** Gives a worked-out unit the code people know it by, where there is one. */
function named(unit: Unit | undefined): Unit | undefined {
  if (!unit) return undefined;
  for (const code of UNIT_CODES) {
    const known = unitOf(code);
    if (known && sameUnit(known, unit)) return known;
  }
  return unit;
}

/**
 * What is left when two sizes cancel has their errors: 31.982 °F would be a hair beside −0.01 °C.
 * Beyond the 14th digit of what was cancelled nothing was ever measured.
 */
function withoutNoise(value: number, size: number): number {
  const decimals = 13 - Math.floor(Math.log10(size));
  return decimals >= 0 && decimals <= 100 ? Number(value.toFixed(decimals)) + 0 : value;
}

/**
 * Converts between UCUM units; undefined when a code is unknown or the dimensions differ. The
 * zeros are subtracted before anything is scaled, so that 32 °F is exactly 0 °C.
 */
export const convert = (value: number, from: string, to: string): number | undefined => {
  if (from === to) return unitOf(from) && value;
  const source = unitOf(from);
  const target = unitOf(to);
  if (!source || !target || !sameDimension(source, target)) return undefined;
  // In hundredths, so that 459.67 and 273.15 are whole numbers.
  const zeros =
    Math.round(source.zero * 100) * target.den - Math.round(target.zero * 100) * source.den;
  const shift = zeros === 0 ? 0 : zeros / (100 * target.den * source.num);
  const converted = ((value + shift) * source.num * target.den) / (source.den * target.num);
  if (shift === 0 || !Number.isFinite(converted)) return converted;
  const size = Math.max(Math.abs(value), Math.abs(shift)) * (source.num / source.den);
  return withoutNoise(converted, (size * target.den) / target.num);
};
