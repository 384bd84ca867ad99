import { expect, test } from "vitest";
import {
  addParticular,
  addValue,
  changeParticular,
  readChoices,
  readRange,
  removeParticular,
  withAmount,
  withKind,
} from "./around-edit.ts";
import { emptyDocument } from "./draft-document.ts";

test("particulars keep the order they were added in", () => {
  const first = addParticular(emptyDocument("Lead"), "Length");
  const second = addParticular(first.document, "Cross-section");
  expect(Object.values(second.document.particulars ?? {}).map(({ order }) => order)).toEqual([
    1, 2,
  ]);
  expect(removeParticular(second.document, first.name).particulars).toEqual({
    cross_section: { title: "Cross-section", order: 2, type: "number" },
  });
});

test("changing one thing of a particular keeps the rest of it", () => {
  const { document, name } = addParticular(emptyDocument("Lead"), "Length");
  const ranged = changeParticular(document, name, (one) => ({
    ...one,
    minimum: 0.5,
    maximum: 100,
  }));
  const named = changeParticular(ranged, name, (one) => ({ ...one, title: "Length of the lead" }));
  expect(named.particulars?.length).toMatchObject({ minimum: 0.5, maximum: 100, order: 1 });
});

test("another kind drops what only the old kind could have", () => {
  const number = { title: "Class", order: 2, type: "number", unit: "m", minimum: 1 } as const;
  expect(withKind(number, "string")).toEqual({ title: "Class", order: 2, type: "string" });
  expect(withKind(number, "number")).toBe(number);
});

test("choices of a number are numbers, or nothing is taken", () => {
  expect(readChoices("0.75, 1\n1,5", "number")).toEqual([0.75, 1, 1.5]);
  expect(readChoices("I, II, I", "string")).toEqual(["I", "II"]);
  expect(readChoices("1, two", "number")).toBeUndefined();
});

test("a range may be open at an end, and is never turned round", () => {
  expect(readRange("0.5 to 100")).toEqual({ min: 0.5, max: 100 });
  expect(readRange("to 100")).toEqual({ max: 100 });
  expect(readRange("-5 to")).toEqual({ min: -5 });
  expect(readRange("")).toEqual({});
  expect(readRange("100 to 0.5")).toBeUndefined();
  expect(readRange("about ten")).toBeUndefined();
});

test("a value is a number or a formula, never both", () => {
  const { document, name } = addValue(emptyDocument("Lead"), "Joints");
  const value = document.values?.[name] ?? { const: 1 };
  const formula = withAmount({ ...value, unit: "Ohm" }, "2 * asset.length");
  expect(formula).toEqual({ title: "Joints", unit: "Ohm", formula: "2 * asset.length" });
  expect(withAmount(formula, 0.1)).toEqual({ title: "Joints", unit: "Ohm", const: 0.1 });
});
