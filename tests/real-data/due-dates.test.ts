import { existsSync, readFileSync } from "node:fs";
import {
  addDuration,
  type CivilDate,
  calendarOf,
  civilDate,
  civilParts,
  computeWindow,
  daysInMonth,
  firstOpen,
  forecast,
  formatCivilDate,
  type IntervalRule,
  lastOpen,
  type OnDayOff,
  parseDuration,
  subtractDuration,
  weekday,
} from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { BANK_HOLIDAYS, BUSINESS_DAYS } from "../../schemas/testing/bank-holidays.ts";
import { day, doneOn } from "../../schemas/testing/due-records.ts";
import { holidaysOf } from "../../server/usecases/holidays.ts";
import { realDataPath } from "./folder.ts";
import { ZONE_CHECKS } from "./zone-checks.ts";

/** Published figures on dates beside the open data; read in place. */
const FILE = realDataPath("..", "checkvalues", "06-recurrence.json");

interface Entry {
  readonly id: string;
  readonly topic: string;
  // Each topic has fields of its own.
  readonly input: Readonly<Record<string, unknown>>;
  readonly expected: unknown;
}

const entries: readonly Entry[] = existsSync(FILE)
  ? (JSON.parse(readFileSync(FILE, "utf8")) as { entries: readonly Entry[] }).entries
  : [];

const text = (value: unknown): string => {
  if (typeof value !== "string") throw new TypeError(`no text: ${JSON.stringify(value)}`);
  return value;
};
const count = (value: unknown): number => {
  if (typeof value !== "number") throw new TypeError(`no number: ${JSON.stringify(value)}`);
  return value;
};

const dates = (rule: IntervalRule, ...done: readonly string[]) => {
  const { earliest, due, latest } = computeWindow(rule, {
    done: done.map(doneOn),
    registered: 0 as CivilDate,
  });
  return {
    due: formatCivilDate(due),
    from: formatCivilDate(earliest),
    to: formatCivilDate(latest),
  };
};
const around = (months: number, days: number): IntervalRule => ({
  kind: "from-last-done",
  every: `P${months}M`,
  early: `P${days}D`,
  late: `P${days}D`,
});
const plus = (iso: string, duration: string): string =>
  formatCivilDate(
    duration.startsWith("-")
      ? subtractDuration(day(iso), duration.slice(1))
      : addDuration(day(iso), duration),
  );

/** Year and week of ISO 8601: those of the Thursday of the same week. */
const isoWeek = (iso: string): string => {
  const date = day(iso);
  const thursday = (date - weekday(date) + 4) as CivilDate;
  const { year } = civilParts(thursday);
  const week = Math.floor((thursday - civilDate(year, 1, 1)) / 7) + 1;
  return `${year}-W${String(week).padStart(2, "0")}-${weekday(date)}`;
};

const late = (afterLate: "keep" | "restart") => (entry: Entry) => {
  const { due, done_with_extension, done, interval } = entry.input;
  const every = text(interval);
  const rule: IntervalRule = { kind: "anniversary", every, within: "P1M", afterLate };
  const before = formatCivilDate(subtractDuration(day(text(due)), every));
  expect(dates(rule, before).due).toBe(due);
  expect(dates(rule, before, text(done_with_extension ?? done)).due).toBe(entry.expected);
};

/** Done on each of its dates, a series gives these and then is over. */
const series = ({ input, expected }: Entry) => {
  const start = text(input.dtstart);
  const rule: IntervalRule = { kind: "recurrence", rrule: text(input.rrule), start };
  const from = day(start);
  const coming = forecast(rule, { done: [], registered: from }, { from });
  expect(coming.map(({ window }) => formatCivilDate(window.due))).toEqual(expected);
};

/** The variation is a margin in hours; at ten hours a day it is a tenth of them in days. */
const hours = ({ input, expected }: Entry) => {
  const every = count(input.interval_h);
  const { max_variation_h: late } = expected as { readonly max_variation_h: number };
  expect(late).toBe(Math.min(every / 10, 500));
  const rule: IntervalRule = { kind: "on-usage", point: "hours", every, late, unit: "h" };
  const reading = (on: number, value: number) =>
    ({ entry: `reading ${on}`, on: on as CivilDate, at: null, value, unit: "h" }) as const;
  const { due, latest } = computeWindow(rule, {
    done: [doneOn(0 as CivilDate)],
    registered: 0 as CivilDate,
    meter: [reading(0, 0), reading(10, 100)],
  });
  expect([due, latest]).toEqual([every / 10, (every + late) / 10]);
};

/** How the engine is held against the entries of a topic. */
const CHECKS: Readonly<Record<string, (entry: Entry) => void | Promise<void>>> = {
  "tolerance window": ({ input, expected }) => {
    if ("last" in input) {
      const rule = around(count(input.months), count(input.plus_minus));
      expect(dates(rule, text(input.last))).toEqual(expected);
      return;
    }
    const months = count(input.interval_months);
    const { plus_minus_days } = expected as { plus_minus_days: number };
    const { due, from, to } = dates(around(months, plus_minus_days), "2015-03-15");
    expect(due).toBe(plus("2015-03-15", `P${months}M`));
    expect([day(due) - day(from), day(to) - day(due)]).toEqual([plus_minus_days, plus_minus_days]);
  },
  monthly: () => {
    const rule: IntervalRule = { kind: "each-period", period: "month" };
    expect(dates(rule, "2026-01-01")).toMatchObject({ from: "2026-02-01", to: "2026-02-28" });
    expect(dates(rule, "2026-01-01", "2026-02-28").from).toBe("2026-03-01");
  },
  weekly: () => {
    const rule: IntervalRule = { kind: "each-period", period: "week" };
    expect(dates(rule, "2026-12-28")).toMatchObject({ from: "2027-01-04", to: "2027-01-10" });
  },
  "quarterly worked example": ({ input, expected }) => {
    expect(input.rule).toBe("3 months +-10 days");
    expect(dates(around(3, 10), text(input.last))).toEqual(expected);
  },
  "next interval after a variation": late("keep"),
  "Part-ML one-month tolerance": late("restart"),
  "calendar arithmetic with clamping": ({ input, expected }) => {
    expect(plus(text(input.start), text(input.duration))).toBe(expected);
  },
  "chained monthly steps drift": ({ input, expected }) => {
    let at = text(input.start);
    const steps = Array.from({ length: count(input.times) }, () => {
      at = plus(at, text(input.step));
      return at;
    });
    expect(steps).toEqual(expected);
  },
  "anchored monthly steps do not drift": ({ input, expected }) => {
    const rule: IntervalRule = {
      kind: "anniversary",
      every: text(input.step),
      within: "P1W",
      afterLate: "restart",
    };
    const done = [text(input.start)];
    for (let turn = 0; turn < count(input.times); turn += 1) done.push(dates(rule, ...done).due);
    expect(done.slice(1)).toEqual(expected);
  },
  "order of parts": ({ input, expected }) => {
    const start = text(input.start);
    expect([plus(start, "P1M1D"), plus(plus(start, "P1D"), "P1M")]).toEqual(expected);
  },
  "100/400-year rule": ({ input, expected }) => {
    const years = input.years as readonly number[];
    expect(years.map((year) => daysInMonth(year, 2) === 29)).toEqual(expected);
  },
  "ISO 8601 / RFC 3339 appendix A duration validity": ({ input, expected }) => {
    expect(parseDuration(text(input.text)) !== undefined).toBe(expected);
  },
  "ISO week date": ({ input, expected }) => expect(isoWeek(text(input.date))).toBe(expected),
  "bank holidays, England and Wales": ({ input, expected }) => {
    expect(BANK_HOLIDAYS.filter((date) => date.startsWith(`${input.year}`))).toEqual(expected);
  },
  "business-day adjustment (England and Wales)": ({ input, expected }) => {
    const date = day(text(input.date));
    const moved = (onDayOff: OnDayOff, period = false) => {
      const { day: at } = civilParts(date);
      const [rule, before]: [IntervalRule, string] = period
        ? [{ kind: "each-period", period: "month", day: at, onDayOff }, `-P${at}D`]
        : [{ kind: "from-last-done", every: "P2W", onDayOff }, "-P14D"];
      const { due } = computeWindow(rule, {
        done: [doneOn(plus(text(input.date), before))],
        registered: 0 as CivilDate,
        calendar: BUSINESS_DAYS,
      });
      return formatCivilDate(due);
    };
    // "Modified preceding" no interval takes.
    expect(expected).toMatchObject({
      following: moved("roll-forward"),
      modified_following: moved("roll-forward", true),
      preceding: moved("roll-back"),
    });
    expect(expected).toMatchObject({
      preceding: formatCivilDate(lastOpen(BUSINESS_DAYS, date, 0 as CivilDate) ?? date),
      following: formatCivilDate(firstOpen(BUSINESS_DAYS, date) ?? date),
    });
  },
  "substitute day": async ({ input, expected }) => {
    const year = count(input.year);
    const dates = (await holidaysOf("GB-ENG", year)).map(({ date }) => date);
    expect(dates.filter((date) => date.startsWith(`${year}-01`))).toEqual([expected]);
  },
  "month-end by standard": series,
  "leap-day yearly, default SKIP=OMIT": series,
  "variation by hours": hours,
  "variation by hours, ceiling": hours,
  ...ZONE_CHECKS,
  "one-off bank holiday": ({ expected }) => {
    const extra = calendarOf({ holidays: [{ date: text(expected), reason: "one-off" }] });
    expect(extra.shut(day(text(expected)))?.reason).toBe("one-off");
  },
};

/** Entries that the engine is not held against, by id, and why. */
const NOT_USED: Readonly<Record<string, string>> = {
  "rc-010": "counts from the month, a reading of the rule that no interval takes",
  "rc-047": "a time of the clock; intervals are of whole days",
  "rc-050": "a time of the clock; intervals are of whole days",
  "rc-062": "RFC 3339 wants months between years and days; ISO 8601 does not, nor do intervals",
  "rc-125": "has a time of the clock; intervals are of whole days",
};

const used = entries.filter(({ id }) => !Object.hasOwn(NOT_USED, id));

describe.skipIf(entries.length === 0)("the published figures on dates", () => {
  test.each(used.map((entry) => [entry.id, entry.topic, entry] as const))(
    "%s, %s: as published",
    async (_, topic, entry) => {
      const check = CHECKS[topic];
      if (check === undefined) throw new Error(`nothing is held against “${topic}”`);
      await check(entry);
    },
  );

  test("84 of 89 are used, and each of the others says why not", () => {
    const known = new Set(entries.map(({ id }) => id));
    expect(Object.keys(NOT_USED).filter((id) => !known.has(id))).toEqual([]);
    expect({ all: entries.length, used: used.length }).toEqual({ all: 89, used: 84 });
  });
});
