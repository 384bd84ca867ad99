import { printUnit } from "@roundbook/runner/form";
import { UNIT_CODES } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { readUnit } from "./read-unit.ts";

test("a unit is read as people write it", () => {
  expect(readUnit("°C")).toBe("Cel");
  expect(readUnit("Ω")).toBe("Ohm");
  expect(readUnit("mm²")).toBe("mm2");
  expect(readUnit(" Ω/m ")).toBe("Ohm/m");
  expect(readUnit("Ohm")).toBe("Ohm");
});

test("mega and milli are never taken for each other", () => {
  expect(readUnit("MΩ")).toBe("MOhm");
  expect(readUnit("mΩ")).toBe("mOhm");
});

test("what is no unit is not guessed at", () => {
  expect(readUnit("furlong")).toBeUndefined();
  expect(readUnit("")).toBeUndefined();
  expect(readUnit("m/m/m")).toBeUndefined();
});

test("every unit offered reads back as itself or one that prints alike", () => {
  for (const code of UNIT_CODES) {
    if (printUnit(code) === "") continue;
    const read = readUnit(printUnit(code));
    expect(read && printUnit(read)).toBe(printUnit(code));
  }
});
