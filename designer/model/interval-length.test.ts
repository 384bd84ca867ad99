import { durationWords, english } from "@roundbook/runner/form";
import { expect, test } from "vitest";
import { readLength, readMargin } from "./interval-length.ts";

test.each([
  ["14", "P14D"],
  ["14 days", "P14D"],
  ["2 weeks", "P2W"],
  ["month", "P1M"],
  ["a year", "P1Y"],
  ["1 year 6 months", "P1Y6M"],
  ["6 months and 1 year", "P1Y6M"],
  ["18 Months", "P18M"],
])("“%s” is the length %s", (text, iso) => {
  expect(readLength(text)).toBe(iso);
});

test.each(["", "soon", "-3", "1.5 months", "at once", "6 moons", "2 weeks 1 week"])(
  "“%s” is no length",
  (text) => {
    expect(readLength(text)).toBeUndefined();
  },
);

test.each(["P1D", "P2W", "P14M", "P1Y6M", "P1M1W", "P3Y2M1W4D"])(
  "%s is read back from its own words",
  (iso) => {
    expect(readLength(durationWords(english.t, iso))).toBe(iso);
  },
);

test("a margin that cannot be read is never taken for none", () => {
  expect(readMargin("soon")).toBeNull();
  expect(readMargin("")).toBeUndefined();
  expect(readMargin("0 days")).toBeUndefined();
  expect(readMargin("1 month")).toBe("P1M");
});
