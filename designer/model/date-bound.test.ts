import { expect, test } from "vitest";
import { dateBound, dateFields, readDay, readDistance } from "./date-bound.ts";
import { dateBoundWords, distanceWords } from "./date-words.ts";
import { emptyDocument } from "./draft-document.ts";

test("a distance is read as it is printed", () => {
  for (const text of ["3 months after", "1 day before", "2 years after"]) {
    const read = readDistance(text);
    if (!read) throw new Error(`${text} under test`);
    expect(distanceWords(read)).toBe(text);
  }
  expect(readDistance("")).toEqual({ sign: "plus", count: 0, unit: "D" });
  expect(readDistance("3 months")).toBeUndefined();
});

test("a bound keeps what it says through the form, and one the form cannot show is left alone", () => {
  for (const bound of [
    "2027-01-31",
    { from: "today" },
    { from: "asset.fitted", plus: "P10Y" },
    { from: "answers.tested", minus: "P2W" },
  ]) {
    const fields = dateFields(bound);
    if (!fields) throw new Error("the bound under test");
    expect(dateBound(fields)).toEqual(bound);
  }
  expect(dateFields({ from: "today", plus: "P1Y6M" })).toBeNull();
});

test("only a day of the calendar is taken", () => {
  expect(readDay(" 2028-02-29 ")).toBe("2028-02-29");
  expect(readDay("2027-02-29")).toBeUndefined();
  expect(readDay("29.2.2028")).toBeUndefined();
});

test("a bound reads in titles", () => {
  const document = {
    ...emptyDocument("Extinguisher"),
    particulars: { fitted: { title: "Date fitted", type: "string", format: "date" } as const },
  };
  expect(dateBoundWords(document, { from: "asset.fitted", plus: "P10Y" })).toBe(
    "10 years after date fitted",
  );
  expect(dateBoundWords(document, { from: "today" })).toBe("the day of the check");
});
