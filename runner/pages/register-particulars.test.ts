import { describe, expect, test } from "vitest";
import { particularsOf, readParticular } from "./register-particulars.tsx";

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
});
