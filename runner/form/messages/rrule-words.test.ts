import { expect, test } from "vitest";
import { ordinal, rruleForm, rruleText, rruleWords } from "./rrule-words.ts";

const WORDS: readonly (readonly [string, string])[] = [
  ["FREQ=DAILY", "each day"],
  ["FREQ=DAILY;INTERVAL=3", "every 3 days"],
  ["FREQ=WEEKLY", "each week"],
  ["FREQ=WEEKLY;INTERVAL=2;BYDAY=MO", "every 2 weeks on Monday"],
  ["FREQ=WEEKLY;BYDAY=MO,WE,FR", "each week on Monday, Wednesday and Friday"],
  ["FREQ=MONTHLY;BYDAY=-1FR", "each month on the last Friday"],
  ["FREQ=MONTHLY;INTERVAL=3;BYMONTHDAY=15", "every 3 months on the 15th"],
  ["FREQ=MONTHLY;BYMONTHDAY=-1", "each month on the last day"],
  [
    "FREQ=MONTHLY;BYMONTHDAY=30;RSCALE=GREGORIAN;SKIP=BACKWARD",
    "each month on the 30th, else the last day",
  ],
  ["FREQ=YEARLY;BYMONTH=3;BYMONTHDAY=31", "each year on 31 March"],
  ["FREQ=YEARLY;BYMONTH=3;BYMONTHDAY=1", "each year on 1 March"],
  ["FREQ=YEARLY;INTERVAL=2;BYMONTH=3;BYDAY=1MO", "every 2 years on the first Monday of March"],
  ["FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=-1", "each year on the last day of February"],
  ["FREQ=WEEKLY;BYDAY=TU;COUNT=10", "each week on Tuesday, 10 times"],
  ["FREQ=DAILY;UNTIL=20271224", "each day, until 24\u00a0December 2027"],
];

test.each(WORDS)("%s reads “%s”, and its form writes the same rule", (text, words) => {
  expect(rruleWords(text)).toBe(words);
  const form = rruleForm(text);
  expect(form && rruleText(form)).toBe(text);
});

test.each([
  "FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
  "FREQ=MONTHLY;BYDAY=MO,TU;BYSETPOS=-1",
  // Months without a 31st are left out, which no common form says.
  "FREQ=MONTHLY;BYMONTHDAY=31",
  "FREQ=WEEKLY;BYDAY=XX",
  "FREQ=HOURLY",
  "FREQ=DAILY;FREQ=DAILY",
  "FREQ=YEARLY;BYMONTH=13;BYMONTHDAY=1",
  "FREQ=WEEKLY;BYMONTH=1",
  "",
])("a rarer rule stays as it is written: %j", (text) => {
  expect(rruleForm(text)).toBeNull();
  expect(rruleWords(text)).toBe(`by the rule ${text}`);
});

test("an ordinal ends as it is spoken", () => {
  expect([1, 2, 3, 4, 11, 12, 13, 21, 22, 31].map(ordinal).join(" ")).toBe(
    "1st 2nd 3rd 4th 11th 12th 13th 21st 22nd 31st",
  );
});
