import { describe, expect, test } from "vitest";
import { checkParticular, particularsOf, readParticular } from "./register-particulars.tsx";

const definitions = {
  length: { title: "Length", type: "number", unit: "m" },
  csa: { title: "Cross-section", enum: [1, 1.5] },
  class: { title: "Class", enum: ["I", "II"] },
} as const;

describe("particulars as typed", () => {
  test("a comma is a decimal sign, and what is no number is not taken for one", () => {
    expect(readParticular({ title: "Length", type: "number" }, "1,5")).toBe(1.5);
    expect(readParticular({ title: "Length", type: "number" }, "ten")).toBeNull();
  });

  test("an empty field leaves the particular unknown: it is never zero or empty text", () => {
    expect(particularsOf(definitions as never, { length: " ", csa: "1.5", class: "" })).toEqual({
      csa: 1.5,
    });
  });

  test("a choice among numbers is stored as a number", () => {
    expect(particularsOf(definitions as never, { csa: "1" })).toEqual({ csa: 1 });
  });

  test("a text that is not written as its particular asks says so", async () => {
    const bay = { title: "Bay", type: "string", pattern: "^[A-Z][0-9]+$" } as const;
    expect(await checkParticular("bay", bay, "B12")).toBe(true);
    expect(await checkParticular("bay", bay, "")).toBe(true);
    expect(await checkParticular("bay", bay, "12")).toContain("“Bay” is not written as it must be");
  });

  test("a number that is too large says so, not that it is none", async () => {
    const length = { title: "Length", type: "number", maximum: 50 } as const;
    expect(await checkParticular("length", length, "51")).toContain("“Length” must be 50 or less");
    expect(await checkParticular("length", length, "ten")).toContain("Write a number");
  });
});
