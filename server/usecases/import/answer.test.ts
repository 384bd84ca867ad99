import type { PointDefinition } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { readAnswer } from "./answer.ts";
import { readDate } from "./cell.ts";

const reading: PointDefinition = {
  $ref: "#/$defs/reading",
  title: "Insulation",
  quantity: { unit: "MOhm", alsoIn: ["Ohm"] },
};
const graded: PointDefinition = { $ref: "#/$defs/graded", title: "Grade", minimum: 1, maximum: 5 };
const choice: PointDefinition = {
  $ref: "#/$defs/choice",
  title: "Class",
  oneOf: [
    { const: "one", title: "Class I" },
    { const: "two", title: "Class II" },
  ],
};
const read = (point: PointDefinition, cell: string, how = {}, decimal: "." | "," = ".") => {
  const answer = readAnswer(point, { column: "c", ...how }, cell, decimal);
  return answer.ok ? answer.value : answer.problems[0]?.code;
};

describe("a cell of a results file", () => {
  test("is a reading with the unit written, mapped, or the point's own, and may be censored", () => {
    expect(read(reading, ">200")).toEqual({ value: 200, unit: "MOhm", comparator: ">" });
    expect(read(reading, "≥ 1,5 MΩ", {}, ",")).toEqual({
      value: 1.5,
      unit: "MOhm",
      comparator: ">=",
    });
    expect(read(reading, "500", { unit: "Ohm" })).toEqual({ value: 500, unit: "Ohm" });
    for (const text of ["3 mm", "0x10"]) expect(read(reading, text)).toBe("unit-not-accepted");
    for (const text of ["1,234.5", "1.2.3", "-", "NaN", "Infinity", "1e999"])
      expect([text, read(reading, text)]).toEqual([text, "number-format"]);
  });

  test("is a grade also where an export wrote it with decimals", () => {
    expect(read(graded, "3.0")).toBe(3);
    expect(read(graded, "3.5")).toBe("number-not-whole");
  });

  test("is a choice by its value, its title or a mapped word", () => {
    expect(read(choice, "one")).toBe("one");
    expect(read(choice, "Class II")).toBe("two");
    expect(read(choice, "II", { words: { II: "two" } })).toBe("two");
    expect(read(choice, "III")).toBe("choice-unknown");
  });

  test("says nothing when it is empty, unless the mapping says what that means", () => {
    expect(read(graded, " ")).toBeNull();
    const absent = { absent: { reason: "not-applicable" } };
    expect(read(graded, "", { empty: "not-applicable" })).toEqual(absent);
    expect(read(graded, "n/a", { words: { "N/A": "not-applicable" } })).toEqual(absent);
  });

  test("is a day in the format the mapping names, and no other", () => {
    const day = (text: string, format: Parameters<typeof readDate>[1]) => {
      const found = readDate(text, format, "2026-10-13");
      return found.ok ? found.value : found.problems[0]?.code;
    };
    expect(day("29/02/2024", "DD/MM/YYYY")).toBe("2024-02-29");
    expect(day("02/29/2024", "MM/DD/YYYY")).toBe("2024-02-29");
    expect(day("29.2.2024", "DD.MM.YYYY")).toBe("2024-02-29");
    expect(day("9 Feb 2024", "D MMM YYYY")).toBe("2024-02-09");
    expect(day("29/02/2023", "DD/MM/YYYY")).toBe("date-no-such-day");
    expect(day("02/29/2024", "DD/MM/YYYY")).toBe("date-no-such-day");
    expect(day("9 Fev 2024", "D MMM YYYY")).toBe("date-no-such-day");
    expect(day("2024-02-09T00:00", "YYYY-MM-DD")).toBe("date-format");
    expect(day("2026-10-14", "YYYY-MM-DD")).toBe("date-in-future");
  });
});
