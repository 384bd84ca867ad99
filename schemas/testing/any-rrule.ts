import fc from "fast-check";
import { weekday } from "../due/civil.ts";
import { WEEKDAYS } from "../due/rrule/rrule.ts";
import type { CivilDate } from "../shared/ids.ts";

/** 1950 to 2100: leap days, a century that has none, and every weekday. */
const START = fc.integer({ min: -7305, max: 47_480 }).map((date) => date as CivilDate);

const signed = (most: number) =>
  fc.oneof(fc.integer({ min: 1, max: most }), fc.integer({ min: -most, max: -1 }));

const list = (item: fc.Arbitrary<number | string>, most = 4) =>
  fc.uniqueArray(item, { minLength: 1, maxLength: most }).map((items) => items.join(","));

const ordinal = (most: number) =>
  fc
    .tuple(fc.oneof(fc.constant(""), signed(most).map(String)), fc.constantFrom(...WEEKDAYS))
    .map(([nth, name]) => nth + name);

const plain = fc.constantFrom(...WEEKDAYS);
const maybe = <T>(item: fc.Arbitrary<T>) => fc.option(item, { nil: undefined, freq: 1 });

/** The parts that may stand beside each frequency, with likely values. */
const BY = {
  DAILY: { BYMONTH: fc.integer({ min: 1, max: 12 }), BYMONTHDAY: signed(31), BYDAY: plain },
  WEEKLY: { BYMONTH: fc.integer({ min: 1, max: 12 }), BYDAY: plain },
  MONTHLY: {
    BYMONTH: fc.integer({ min: 1, max: 12 }),
    BYMONTHDAY: signed(31),
    BYDAY: ordinal(5),
  },
  YEARLY: {
    BYMONTH: fc.integer({ min: 1, max: 12 }),
    BYYEARDAY: signed(366),
    BYMONTHDAY: signed(31),
    BYDAY: ordinal(6),
  },
} as const satisfies Readonly<Record<string, Readonly<Record<string, fc.Arbitrary<unknown>>>>>;

const written = (parts: Readonly<Record<string, string | number | undefined>>): string =>
  Object.entries(parts)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => `${name}=${value}`)
    .join(";");

const end = fc.oneof(
  fc.constant({}),
  fc.integer({ min: 1, max: 40 }).map((COUNT) => ({ COUNT })),
  fc.integer({ min: 1951, max: 2101 }).map((year) => ({ UNTIL: `${year}0630` })),
);

const ofFrequency = (freq: keyof typeof BY) => {
  const by: Record<string, fc.Arbitrary<string | undefined>> = {};
  for (const [name, item] of Object.entries(BY[freq])) by[name] = maybe(list(item));
  return fc
    .record({
      start: START,
      INTERVAL: maybe(fc.integer({ min: 1, max: 5 })),
      WKST: maybe(plain),
      by: fc.record(by),
      BYSETPOS: maybe(list(signed(4), 2)),
      end,
    })
    .map(({ start, INTERVAL, WKST, by: parts, BYSETPOS, end: ends }) => {
      const stands = Object.values(parts).some((value) => value !== undefined);
      const picked = stands ? { BYSETPOS } : {};
      // Whole first weeks only: `oracle.test.ts` says why.
      const whole = freq === "WEEKLY" && stands && BYSETPOS !== undefined;
      const week = whole ? { WKST: WEEKDAYS[weekday(start) - 1] } : { WKST };
      const text = written({ FREQ: freq, INTERVAL, ...week, ...parts, ...picked, ...ends });
      return { start, text };
    });
};

const byWeek = fc
  .record({
    start: START,
    WKST: maybe(plain),
    BYMONTH: maybe(list(fc.integer({ min: 1, max: 12 }))),
    INTERVAL: maybe(fc.integer({ min: 1, max: 5 })),
    // No week across New Year by its end: `oracle.test.ts` says why.
    BYWEEKNO: list(fc.oneof(fc.integer({ min: 1, max: 51 }), fc.integer({ min: -51, max: -2 }))),
    BYDAY: list(plain),
    end,
  })
  .map(({ start, end: ends, ...parts }) => ({
    start,
    text: written({ FREQ: "YEARLY", ...parts, ...ends }),
  }));

/** A rule with its DTSTART, as text. */
export const anyRule = fc.oneof(
  ofFrequency("DAILY"),
  ofFrequency("WEEKLY"),
  ofFrequency("MONTHLY"),
  ofFrequency("YEARLY"),
  byWeek,
);
