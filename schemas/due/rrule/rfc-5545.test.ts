import { describe, expect, test } from "vitest";
import { dates, day, rule } from "../../testing/recurrence.ts";
import { EXAMPLES } from "../../testing/rfc-5545-examples.ts";
import { formatCivilDate } from "../civil.ts";
import { occurrences } from "./occurrences.ts";
import { parseRrule } from "./parse-rrule.ts";

// RFC 5545 §3.8.5.3 again: its four rules below a day.
const SUB_DAILY = [
  ["FREQ=HOURLY;INTERVAL=3;UNTIL=19970902T170000Z", "FREQ", 5, 11],
  ["FREQ=MINUTELY;INTERVAL=15;COUNT=6", "FREQ", 5, 13],
  ["FREQ=MINUTELY;INTERVAL=90;COUNT=4", "FREQ", 5, 13],
  ["FREQ=DAILY;BYHOUR=9,10,11,12,13,14,15,16;BYMINUTE=0,20,40", "BYHOUR", 11, 40],
] as const;

describe("the examples of RFC 5545 §3.8.5.3", () => {
  test.each(EXAMPLES)("$text from $start", ({ text, start, first, count, last }) => {
    const found = [...occurrences(rule(text), day(start))].map(formatCivilDate);
    expect(found.slice(0, first.split(" ").length).join(" ")).toBe(first);
    expect(found).toHaveLength(count);
    expect(found.at(-1)).toBe(last);
  });

  test("there are 37 of them at day level", () => {
    expect(EXAMPLES).toHaveLength(37);
  });

  test.each(SUB_DAILY)("%s is refused: days have no hours", (text, part, start, end) => {
    const result = parseRrule(text);
    expect(result.ok ? [] : result.problems[0]).toMatchObject({
      code: "rrule-sub-daily",
      params: { part, start, end },
    });
  });

  test("the last work day of the month: two ways to say a thing give the same days", () => {
    const workdays = "FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-1";
    expect(dates(workdays, "1997-09-30", 4)).toBe("1997-09-30 1997-10-31 1997-11-28 1997-12-31");
    const january = "FREQ=YEARLY;BYMONTH=1;BYDAY=SU,MO,TU,WE,TH,FR,SA";
    expect(dates(january, "1998-01-01", 93)).toBe(dates("FREQ=DAILY;BYMONTH=1", "1998-01-01", 93));
  });
});
