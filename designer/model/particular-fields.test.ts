import { expect, test } from "vitest";
import { EMPTY_FIELD, fromFields, toFields } from "./particular-fields.ts";

test("a particular keeps its name when its title changes", () => {
  const [length = EMPTY_FIELD] = toFields({
    length: { title: "Length", type: "number", unit: "m" },
  });
  expect(fromFields([{ ...length, title: "Length of the lead" }])).toEqual({
    length: { title: "Length of the lead", order: 1, type: "number", unit: "m" },
  });
});

test("two particulars of one title get names of their own", () => {
  const lines = [
    { ...EMPTY_FIELD, title: "Load" },
    { ...EMPTY_FIELD, title: "Load" },
  ];
  expect(Object.keys(fromFields(lines))).toEqual(["load", "load_2"]);
});

test("choices of a number are numbers, choices of words are words", () => {
  const numbers = { ...EMPTY_FIELD, title: "Cross-section", choices: "0.75, 1, 1.5", unit: "mm2" };
  const words = { ...EMPTY_FIELD, title: "Class", kind: "string" as const, choices: "I, II" };
  const made = fromFields([numbers, words]);
  expect(made.cross_section?.enum).toEqual([0.75, 1, 1.5]);
  expect(made.class?.enum).toEqual(["I", "II"]);
});

test("a line without a title is no particular, and an empty bound is no bound", () => {
  expect(
    fromFields([EMPTY_FIELD, { ...EMPTY_FIELD, title: "Year", minimum: "", maximum: "2030" }]),
  ).toEqual({
    year: { title: "Year", order: 1, type: "number", maximum: 2030 },
  });
});

test("units are read as people write them, and what the form does not show is kept", () => {
  const before = {
    csa: {
      title: "Cross-section",
      description: "Of one conductor",
      order: 1,
      type: "integer",
      unit: "mm2",
    },
  } as const;
  const [line = EMPTY_FIELD] = toFields(before);
  expect(line.unit).toBe("mm²");
  expect(fromFields([line], before)).toEqual(before);
});
