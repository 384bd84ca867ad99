import { UcumLhcUtils } from "@lhncbc/ucum-lhc";
import { expect, it } from "vitest";
import { roundSignificant } from "../shared/significant.ts";
import { convert, divideUnits, multiplyUnits, sameUnit, UNIT_CODES, unitOf } from "./units.ts";

const reference = UcumLhcUtils.getInstance();
const known = (code: string) => {
  const unit = unitOf(code);
  if (!unit) throw new Error(`${code} is no unit`);
  return unit;
};

/**
 * Where we differ on purpose. Sound pressure level is a logarithm of a pressure, and a reading in
 * pascals is no reading of it; colonies per litre and per millilitre are the same colonies, while
 * the reference converts no arbitrary unit at all.
 */
const DELIBERATE = /^(.* → dB\[SPL\]|dB\[SPL\] → .*): undefined|^\[CFU\]\/m?L → \[CFU\]\/m?L: \d/;

it("every ordered pair of units converts as the reference library of UCUM does", () => {
  const differing: string[] = [];
  let compared = 0;
  for (const from of UNIT_CODES) {
    for (const to of UNIT_CODES) {
      if (from === to) continue;
      const own = convert(12.5, from, to);
      const theirs = reference.convertUnitTo(from, 12.5, to).toVal;
      compared += 1;
      // The reference is out in the 14th digit of temperatures: 121.99999999999994 °F for 50 °C.
      const near = own !== undefined && theirs !== null && roundSignificant(own / theirs) === 1;
      if (!near && !(own === undefined && theirs === null)) {
        differing.push(`${from} → ${to}: ${own}, reference ${theirs}`);
      }
    }
  }
  expect(compared).toBe(UNIT_CODES.length * (UNIT_CODES.length - 1));
  expect(differing.filter((pair) => !DELIBERATE.test(pair))).toEqual([]);
  expect(differing).toHaveLength(16);
});

/** Of UCUM 2.2, which the reference library has no table of yet: `tests/real-data` reads that itself. */
const NEWER = ["[NTU]"];

it("every unit we offer is a valid UCUM code", () => {
  const invalid = UNIT_CODES.filter(
    (code) => reference.validateUnitString(code).status !== "valid",
  );
  expect(invalid).toEqual(NEWER);
});

it.each([
  [122, "[degF]", "Cel", 50],
  [32, "[degF]", "Cel", 0],
  [-40, "[degF]", "Cel", -40],
  [0, "Cel", "[degF]", 32],
  [273.15, "K", "Cel", 0],
  [180, "mOhm", "Ohm", 0.18],
  [0.999, "MOhm", "kOhm", 999],
  [1, "[in_i]", "mm", 25.4],
  [1, "[lb_av]", "g", 453.59237],
  [1, "[gal_us]", "mL", 3785.411784],
  [180, "deg", "rad", Math.PI],
  [1, "[mi_i]", "km", 1.609344],
  [1, "uS/cm", "mS/m", 0.1],
  [1, "h", "s", 3600],
  [1, "a", "d", 365.25],
  [1, "a", "mo", 12],
  [1, "kW.h", "kJ", 3600],
  [1, "mOhm/m", "Ohm/m", 0.001],
])("%d %s in %s is exactly %d", (value, from, to, expected) => {
  expect(convert(value, from, to)).toBe(expected);
});

it("units of other dimensions, and unknown ones, convert to nothing", () => {
  expect(convert(1, "Ohm", "m")).toBeUndefined();
  expect(convert(1, "lm", "cd")).toBeUndefined();
  expect(convert(1, "ohm", "ohm")).toBeUndefined();
  expect(convert(1, "constructor", "m")).toBeUndefined();
});

it("products and quotients come out in the units people know", () => {
  expect(multiplyUnits(known("m"), known("Ohm/m"))?.code).toBe("Ohm");
  expect(divideUnits(known("V"), known("A"))?.code).toBe("Ohm");
  expect(divideUnits(known("m"), known("m"))?.code).toBe("1");
  expect(multiplyUnits(known("Cel"), known("m"))).toBeUndefined();
  expect(sameUnit(known("Ohm"), known("mOhm"))).toBe(false);
  expect(sameUnit(known("V.A"), known("W"))).toBe(true);
});
