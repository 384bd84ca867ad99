import { rruleForm, rruleText } from "@roundbook/runner/form";
import { expect, test } from "vitest";
import {
  oftenWords,
  readOften,
  readOnDay,
  readYearDay,
  setOften,
  yearDayWords,
} from "./interval-rrule.ts";

test.each([
  ["the last Friday", { nth: -1, weekday: 5 }],
  ["on the first mon", { nth: 1, weekday: 1 }],
  ["2nd Tuesday", { nth: 2, weekday: 2 }],
  ["the last day", { day: -1 }],
  ["the 15th", { day: 15 }],
  ["31", { day: 31 }],
])("“%s” is a day of the month", (text, on) => {
  expect(readOnDay(text)).toEqual(on);
});

test.each(["", "fifth Friday", "the 32nd", "0", "Friday", "the last fr"])(
  "“%s” is no day of the month",
  (text) => {
    expect(readOnDay(text)).toBeUndefined();
  },
);

test.each([
  ["1 March", { month: 3, on: { day: 1 } }],
  ["29 February", { month: 2, on: { day: 29 } }],
  ["the first Monday of March", { month: 3, on: { nth: 1, weekday: 1 } }],
  ["the last day of June", { month: 6, on: { day: -1 } }],
])("“%s” is a day of the year, and its words say it again", (text, read) => {
  expect(readYearDay(text)).toEqual(read);
  expect(yearDayWords(read)).toBe(text);
});

test.each(["31 April", "30 February", "March", "1 Foo"])("“%s” is no day of the year", (text) => {
  expect(readYearDay(text)).toBeUndefined();
});

test.each([
  ["2 weeks", { every: 2, by: "week" }],
  ["month", { every: 1, by: "month" }],
  ["every 3 months", { every: 3, by: "month" }],
  ["each year", { every: 1, by: "year" }],
])("“%s” says how often", (text, often) => {
  expect(readOften(text)).toEqual(often);
});

test("nought and nonsense say nothing of how often", () => {
  for (const text of ["0 weeks", "", "1.5 months", "often"])
    expect(readOften(text)).toBeUndefined();
});

test("another unit begins with the day its first date falls on", () => {
  const form = rruleForm("FREQ=DAILY;COUNT=5");
  // 13 October 2026 is a Tuesday.
  const start = "2026-10-13";
  const texts = (["day", "week", "month", "year"] as const).map((by) =>
    rruleText(setOften(form, { every: 2, by }, start)),
  );
  expect(texts).toEqual([
    "FREQ=DAILY;INTERVAL=2;COUNT=5",
    "FREQ=WEEKLY;INTERVAL=2;BYDAY=TU;COUNT=5",
    "FREQ=MONTHLY;INTERVAL=2;BYMONTHDAY=13;COUNT=5",
    "FREQ=YEARLY;INTERVAL=2;BYMONTH=10;BYMONTHDAY=13;COUNT=5",
  ]);
});

test("the same unit keeps its day", () => {
  const form = rruleForm("FREQ=MONTHLY;BYDAY=-1FR");
  const next = setOften(form, { every: 3, by: "month" }, "2026-10-13");
  expect(rruleText(next)).toBe("FREQ=MONTHLY;INTERVAL=3;BYDAY=-1FR");
  expect(oftenWords(next)).toBe("3 months");
});
