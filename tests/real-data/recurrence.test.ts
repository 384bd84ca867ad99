import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { between } from "../../schemas/due/rrule/occurrences.ts";
import { dates, day, rule } from "../../schemas/testing/recurrence.ts";
import { realDataPath } from "./folder.ts";

/** Published facts of calendars and intervals; those that a recurrence rule can answer. */
const FILE = realDataPath("..", "checkvalues", "06-recurrence.json");

interface Entry {
  readonly id: string;
  readonly topic: string;
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
}

const entries: readonly Entry[] = existsSync(FILE)
  ? JSON.parse(readFileSync(FILE, "utf8")).entries
  : [];
const ids = (list: readonly Entry[]) => list.map((entry) => [entry.id, entry] as const);
const topic = (name: string) => ids(entries.filter((entry) => entry.topic === name));

const isRule = ({ input }: Entry) => typeof input.rrule === "string";
const CLAMPED = /^P(\d+)([MY])$/;
const clamped = entries.filter(
  ({ topic, input }) =>
    topic === "calendar arithmetic with clamping" && CLAMPED.test(String(input.duration)),
);

describe.skipIf(entries.length === 0)("published facts that a recurrence rule answers", () => {
  test("there are 27 of them", () => {
    const weeks = topic("ISO week date").length;
    const anchored = topic("anchored monthly steps do not drift").length;
    const clocks = topic("summer time starts and ends").length;
    const rules = entries.filter(isRule).length;
    expect({ rules, clamped: clamped.length, weeks, anchored, clocks }).toEqual({
      rules: 2,
      clamped: 9,
      weeks: 13,
      anchored: 1,
      clocks: 2,
    });
  });

  test.each(ids(entries.filter(isRule)))("%s: a rule of RFC 7529 and its dates", (_id, entry) => {
    const { rrule, dtstart } = entry.input;
    const expected = entry.expected as readonly string[];
    expect(dates(String(rrule), String(dtstart), 99)).toBe(expected.join(" "));
  });

  test.each(ids(clamped))("%s: SKIP=BACKWARD goes where adding months clamps", (_id, entry) => {
    const [, count, unit] = CLAMPED.exec(String(entry.input.duration)) ?? [];
    const freq = unit === "M" ? "MONTHLY" : "YEARLY";
    const text = `RSCALE=GREGORIAN;SKIP=BACKWARD;FREQ=${freq};INTERVAL=${count}`;
    expect(dates(text, String(entry.input.start), 2)).toBe(
      `${entry.input.start} ${entry.expected}`,
    );
  });

  test.each(topic("anchored monthly steps do not drift"))("%s: nor does a rule", (_id, entry) => {
    const text = "RSCALE=GREGORIAN;SKIP=BACKWARD;FREQ=MONTHLY";
    const expected = entry.expected as readonly string[];
    expect(dates(text, String(entry.input.start), 7)).toBe(
      [entry.input.start, ...expected].join(" "),
    );
  });

  test.each(topic("ISO week date"))("%s: a day of a numbered week", (_id, entry) => {
    const [, week = "", weekday = 0] = /W(\d\d)-(\d)/.exec(String(entry.expected)) ?? [];
    const name = ["MO", "TU", "WE", "TH", "FR", "SA", "SU"][Number(weekday) - 1];
    const date = day(String(entry.input.date));
    const numbered = rule(`FREQ=YEARLY;BYWEEKNO=${week};BYDAY=${name}`);
    expect(between(numbered, date, date, date)).toEqual([date]);
  });

  test.each(topic("summer time starts and ends"))("%s: the last Sundays", (_id, entry) => {
    const { start, end } = entry.expected as { readonly start: string; readonly end: string };
    const text = "FREQ=YEARLY;BYMONTH=3,10;BYDAY=-1SU";
    expect(dates(text, `${entry.input.year}-01-01`, 2)).toBe(
      `${start.slice(0, 10)} ${end.slice(0, 10)}`,
    );
  });
});
