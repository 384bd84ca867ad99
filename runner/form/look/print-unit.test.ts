import { describe, expect, test } from "vitest";
import { printNumber, printQuantity, printUnit, printWorking, unbroken } from "./print-unit.ts";

const space = "\u00a0";

// Codes from the Unified Code for Units of Measure; print symbols are those of the SI brochure.
describe("a unit in print", () => {
  test.each([
    ["Ohm", "Ω"],
    ["MOhm", "MΩ"],
    ["mOhm", "mΩ"],
    ["uOhm", "μΩ"],
    ["Cel", "°C"],
    ["[degF]", "°F"],
    ["mm2", "mm²"],
    ["m3/h", "m³/h"],
    ["Ohm/m", "Ω/m"],
    ["m.s-2", "m·s⁻²"],
    ["N.m", "N·m"],
    ["mA", "mA"],
    ["uA", "μA"],
    ["kPa", "kPa"],
    ["bar", "bar"],
    ["%", "%"],
    ["deg", "°"],
    ["l/min", "l/min"],
    ["mg/l", "mg/l"],
    ["[psi]", "psi"],
    ["[in_i]", "in"],
    ["[pH]", "pH"],
    ["[CFU]/ml", "cfu/ml"],
    ["{outlets}", "outlets"],
    ["m[H2O]", "mH₂O"],
    ["1", ""],
    ["", ""],
  ])("%s is printed %s", (code, print) => {
    expect(printUnit(code)).toBe(print);
  });

  test("μ and Ω are the Greek letters, which the faces hold", () => {
    expect(printUnit("uOhm")).toBe("\u03bc\u03a9");
  });
});

describe("a figure in print", () => {
  test("thousands are grouped by a space that does not break", () => {
    expect(printNumber(3871)).toBe(`3${space}871`);
    expect(printNumber(1234567.5)).toBe(`1${space}234${space}567.5`);
    expect(printNumber(999)).toBe("999");
  });

  test("the declared places are kept, with the sign of the locale", () => {
    expect(printNumber(60, { decimals: 1 })).toBe("60.0");
    expect(printNumber(0.2331, { decimals: 3, decimal: "," })).toBe("0,233");
  });

  test("without declared places it is printed to the 12 figures that are compared", () => {
    expect(printNumber(0.1 + 0.2)).toBe("0.3");
    expect(printNumber(1e-9)).toBe("0.000000001");
    expect(printNumber(1e21)).toBe(["1", ...Array(7).fill("000")].join(space));
  });

  test("a negative has a true minus, and a rounded zero none", () => {
    expect(printNumber(-18.5)).toBe("−18.5");
    expect(printNumber(-0.004, { decimals: 2 })).toBe("0.00");
  });

  test("what is not finite is never printed as a figure", () => {
    expect(() => printNumber(Number.NaN)).toThrow(RangeError);
    expect(() => printNumber(Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});

describe("a quantity in print", () => {
  test("figure and unit do not break apart", () => {
    expect(printQuantity(54.2, "Cel")).toBe(`54.2${space}°C`);
  });

  test("a comparator stands before the figure", () => {
    expect(printQuantity(200, "MOhm", { comparator: ">" })).toBe(`>${space}200${space}MΩ`);
  });

  test("the degree of an angle follows its figure at once", () => {
    expect(printQuantity(15, "deg")).toBe("15°");
  });

  test("a bare figure has no trailing space", () => {
    expect(printQuantity(7, "1")).toBe("7");
  });
});

test("a figure and its unit stay on one line in a person's text, and no letter changes", () => {
  const text = "Extension lead, 10 m × 1.5 mm², 2 of 3 sockets";
  expect(unbroken(text)).toBe("Extension lead, 10\u00a0m × 1.5\u00a0mm², 2\u00a0of 3 sockets");
  expect(unbroken(text).replaceAll("\u00a0", " ")).toBe(text);
});

test("a formula with its numbers has signs of a minus, and words keep their hyphens", () => {
  expect(printWorking("62 - 48.5")).toBe("62 − 48.5");
  expect(printWorking("-2 * (-3 - 1)")).toBe("−2 * (−3 − 1)");
  expect(printWorking("kind-b == 1")).toBe("kind-b == 1");
});
