import { describe, expect, it } from "vitest";
import { type PadKey, parseReading, pressKey, readingText } from "./reading-text.ts";

describe("a written reading", () => {
  it.each([
    ["0.31", { value: 0.31 }],
    ["0,31", { value: 0.31 }],
    [".5", { value: 0.5 }],
    ["5.", { value: 5 }],
    ["-12", { value: -12 }],
    ["−12", { value: -12 }],
    [">200", { value: 200, comparator: ">" }],
    ["≤ 0,5", { value: 0.5, comparator: "<=" }],
    ["<-3", { value: -3, comparator: "<" }],
  ])("“%s” is read", (text, reading) => {
    expect(parseReading(text)).toEqual(reading);
  });

  it.each([
    "",
    " ",
    "<",
    "-",
    ".",
    "1,000.5",
    "1.2.3",
    "1e5",
    "ok",
    "0x10",
    "5>",
    "NaN",
    "9".repeat(30),
  ])("“%s” is no number, so no answer", (text) => {
    expect(parseReading(text)).toBeUndefined();
  });

  it.each([
    { value: 0.3, unit: "Ohm", comparator: "<" as const },
    { value: 1e-7, unit: "A" },
    { value: -40, unit: "Cel" },
  ])("stands in its box as it can be read again: %o", (reading) => {
    const { unit: _, ...written } = reading;
    expect(parseReading(readingText(reading))).toEqual(written);
  });
});

describe("the pad", () => {
  const press = (...keys: PadKey[]) => keys.reduce(pressKey, "");
  it("puts signs where they belong, whenever they are pressed", () => {
    expect(press("3", "<")).toBe("<3");
    expect(press("3", "<", ">")).toBe(">3");
    expect(press("3", "<", "<")).toBe("3");
    expect(press("4", "-", "<")).toBe("<-4");
    expect(press("4", "-", "-")).toBe("4");
  });

  it("takes one decimal sign and deletes from the end", () => {
    expect(press("0", ".", "2", ".", "3")).toBe("0.23");
    expect(press("1", "2", "delete")).toBe("1");
    expect(press("delete")).toBe("");
  });
});
