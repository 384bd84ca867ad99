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
const read = (
  point: PointDefinition,
  cell: string | string[],
  how = {},
  decimal: "." | "," = ".",
) => {
  const answer = readAnswer(point, { column: "c", ...how }, [cell].flat(), {
    decimal,
    format: "DD/MM/YYYY",
  });
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

  test("is a timed reading only with the seconds that a column gives", () => {
    const timed = (waited: string) =>
      readAnswer(reading, { column: "c" }, ["3"], { decimal: ".", format: "DD/MM/YYYY" }, waited);
    expect(timed("60")).toEqual({ ok: true, value: { value: 3, unit: "MOhm", elapsed: 60 } });
    expect(timed("")).toEqual({ ok: true, value: { value: 3, unit: "MOhm" } });
    expect(timed("a minute")).toMatchObject({ problems: [{ code: "number-format" }] });
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

  test("is a count, and never half of one", () => {
    const count: PointDefinition = { $ref: "#/$defs/count", title: "Extinguishers" };
    expect(read(count, "12")).toBe(12);
    expect(read(count, "1.5")).toBe("number-not-whole");
  });

  test("is a date in the file's own notation or the one mapped, and may lie ahead", () => {
    const date: PointDefinition = { $ref: "#/$defs/date", title: "Use by" };
    expect(read(date, "01/02/2099")).toBe("2099-02-01");
    expect(read(date, "2099-02-01", { format: "YYYY-MM-DD" })).toBe("2099-02-01");
    expect(read(date, "2099-02-01")).toBe("date-format");
  });

  test("is several choices apart by a separator, each once and each known", () => {
    const choices: PointDefinition = {
      $ref: "#/$defs/choices",
      title: "Found",
      items: { oneOf: [...(choice.oneOf ?? [])].filter((one) => "const" in one) },
    };
    expect(read(choices, "one; Class II; one")).toEqual(["one", "two"]);
    expect(read(choices, "I,II", { separator: ",", words: { I: "one", II: "two" } })).toEqual([
      "one",
      "two",
    ]);
    expect(read(choices, "one; three")).toBe("choice-unknown");
    expect(read(choices, ";")).toBe("choice-unknown");
  });

  test("is one of several readings, each in a column or all in one", () => {
    const readings: PointDefinition = {
      ...reading,
      $ref: "#/$defs/readings",
      several: { count: 2, combine: "lowest" },
    };
    const both = [
      { value: 7, unit: "MOhm" },
      { value: 5, unit: "MOhm", comparator: ">" },
    ];
    expect(read(readings, ["7", "", ">5"])).toEqual(both);
    expect(read(readings, "7; >5")).toEqual(both);
    expect(read(readings, ["7", "x"])).toBe("number-format");
  });

  test("never says what was not taken, signed or worked out in a table", () => {
    for (const kind of ["photo", "signature", "sample", "calculated"] as const)
      expect(read({ $ref: `#/$defs/${kind}`, title: "T" }, "x")).toBe("import-never");
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
