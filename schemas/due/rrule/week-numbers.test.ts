import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { dates, day, rule } from "../../testing/recurrence.ts";
import { formatCivilDate } from "../civil.ts";
import { between } from "./occurrences.ts";

const EVERY_DAY = "BYDAY=MO,TU,WE,TH,FR,SA,SU";
const EPOCH = new Temporal.PlainDate(1970, 1, 1);

test("for 130 years each day lies in the week of ISO 8601, from the year's end too", () => {
  const [from, to] = [day("1970-01-01"), day("2100-12-31")];
  const weeks = Array.from({ length: 53 }, (_, index) => index + 1);
  const daysOf = (week: number) =>
    between(rule(`FREQ=YEARLY;BYWEEKNO=${week};${EVERY_DAY}`), from, from, to);
  const ours = new Map<number, string>();
  for (const week of weeks) {
    for (const date of daysOf(week)) ours.set(date, `${week}`);
  }
  for (const week of weeks) {
    for (const date of daysOf(-week)) ours.set(date, `${ours.get(date)} -${week}`);
  }
  let wrong = 0;
  for (let date = Number(from); date <= to; date += 1) {
    const { weekOfYear = 0, yearOfWeek = 0 } = EPOCH.add({ days: date });
    const count = new Temporal.PlainDate(yearOfWeek, 12, 28).weekOfYear ?? 0;
    if (ours.get(date) !== `${weekOfYear} ${weekOfYear - count - 1}`) wrong += 1;
  }
  expect(wrong).toBe(0);
});

// The widely published examples of ISO 8601, and the weeks of 2018 to 2027 worked from the calendar.
test.each([
  ["2005-01-01", 53],
  ["2006-12-31", 52],
  ["2007-12-31", 1],
  ["2008-12-29", 1],
  ["2010-01-03", 53],
  ["2018-12-31", 1],
  ["2019-12-30", 1],
  ["2021-01-01", 53],
  ["2024-12-30", 1],
  ["2026-01-01", 1],
  ["2026-12-31", 53],
  ["2027-01-03", 53],
  ["2027-01-04", 1],
])("%s lies in week %i", (date, week) => {
  const at = day(date);
  expect(between(rule(`FREQ=YEARLY;BYWEEKNO=${week};${EVERY_DAY}`), at, at, at)).toEqual([at]);
});

test("the week starts on WKST: the first with four days in the year is week 1", () => {
  const first = (wkst: string) => dates(`FREQ=YEARLY;BYWEEKNO=1;WKST=${wkst}`, "2025-12-24", 2);
  // 1 January 2026 is a Thursday; weeks from Friday have three days of it at most before week 1.
  expect(first("MO")).toBe("2025-12-31 2027-01-06");
  expect(first("FR")).toBe("2026-01-07 2027-01-06");
});

test("each day of a week across New Year belongs to its own calendar year", () => {
  const every = rule(`FREQ=YEARLY;INTERVAL=2;BYWEEKNO=1;${EVERY_DAY}`);
  const found = between(every, day("2024-01-01"), day("2024-12-01"), day("2026-01-31"));
  // Week 1 of 2025 begins on 30 December 2024; its other days are those of a year left out.
  expect(found.map(formatCivilDate).slice(0, 3)).toEqual([
    "2024-12-30",
    "2024-12-31",
    "2026-01-01",
  ]);
});
