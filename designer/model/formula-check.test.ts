import { checklistNames } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { expect, test } from "vitest";
import { emptyDocument } from "./draft-document.ts";
import { type Checked, checkFormula, mended } from "./formula-check.ts";

const engine = createFormulaEngine();
const names = checklistNames(
  {
    ...emptyDocument("Lead"),
    particulars: {
      length: { title: "Length", type: "number", unit: "m" },
      class: { title: "Class", enum: ["I", "II"] },
    },
    values: { joints: { const: 0.1, unit: "Ohm" }, r_per_m: { const: 0.0133, unit: "Ohm/m" } },
  },
  engine,
).types;
const check = (text: string, wanted: Parameters<typeof checkFormula>[2] = { unit: "Ohm" }) =>
  checkFormula(text, names, wanted, engine);
const wrong = (checked: Checked) => {
  if (checked.state !== "wrong") throw new Error(`expected a fault, found ${checked.state}`);
  return checked;
};

test("a figure is a bound without a formula, in a condition it is none", () => {
  expect(check("0,25").state).toBe("figure");
  expect(check("5", { condition: true }).state).toBe("wrong");
  expect(check("  ").state).toBe("nothing");
});

test("a sound formula says what unit it comes to", () => {
  expect(check("joints + asset.length * r_per_m")).toEqual({ state: "sound", unit: "Ohm" });
  expect(check("asset.class == 'I'", { condition: true }).state).toBe("sound");
});

test("a fault has its place, and what was meant is put there", () => {
  const fault = wrong(check("joints + asset.lenght * r_per_m"));
  expect([fault.start, fault.end, fault.nearest]).toEqual([9, 21, "asset.length"]);
  expect(mended("joints + asset.lenght * r_per_m", fault)).toBe("joints + asset.length * r_per_m");
});

test("a length added to a resistance is refused at its place", () => {
  expect(wrong(check("0.9 * joints + asset.length")).problem.code).toBe("unit-mismatch");
});

test("without the engine a formula waits, it is never taken for sound", () => {
  expect(checkFormula("joints * 2", names, { unit: "Ohm" }, undefined).state).toBe("waiting");
});
