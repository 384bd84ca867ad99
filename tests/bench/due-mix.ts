import type {
  Calendar,
  CivilDate,
  DoneRecord,
  DueFacts,
  IntervalRule,
  RuleOf,
} from "@roundbook/schemas";
import { calendarOf, civilDate } from "@roundbook/schemas";

/** One asset under one interval. */
export interface DueCase {
  readonly rule: IntervalRule;
  readonly facts: DueFacts;
}

const table: RuleOf<"by-risk">["table"] = {
  policy: "unique",
  inputs: ["asset.environment", "asset.class"],
  rules: [
    ["office", "I", "P4Y"],
    ["office", "II", "P5Y"],
    ["workshop", "I", "P6M"],
    ["workshop", "II", "P1Y"],
    ["site", "I", "P3M"],
    ["site", "II", "P3M"],
  ].map(([environment = "", one = "", then = ""]) => ({ when: [environment, one], then })),
};

/** The kinds of the mix in turn; figures are invented. */
export const MIX: readonly IntervalRule[] = [
  { kind: "from-last-done", every: "P12M", early: "P30D", late: "P30D" },
  { kind: "anniversary", every: "P6M", within: "P1M", afterLate: "restart" },
  { kind: "each-period", period: "month" },
  { kind: "spacing", min: "P9M", max: "P15M", every: "P12M" },
  { kind: "recurrence", rrule: "FREQ=MONTHLY;BYMONTHDAY=15", start: "2020-01-15", early: "P5D" },
  {
    kind: "by-risk",
    table,
    worse: { environment: ["office", "workshop", "site"], class: ["II", "I"] },
  },
  { kind: "from-last-done", every: "P1W", late: "P2D" },
  { kind: "anniversary", every: "P12M", within: "P2M", afterLate: "keep" },
];

const HOLIDAYS = [2025, 2026, 2027, 2028].flatMap((year) =>
  ["01-01", "05-04", "08-31", "12-25", "12-26"].map((day) => ({
    date: `${year}-${day}`,
    reason: "Bank holiday",
  })),
);

/** Saturdays, Sundays and holidays off, and closed for a fortnight in winter. */
const CALENDAR: Calendar = calendarOf({
  weekdays: [
    { weekday: 6, reason: "Saturday" },
    { weekday: 7, reason: "Sunday" },
  ],
  holidays: HOLIDAYS,
  seasons: [{ from: "12-21", to: "01-04", reason: "Closed in winter" }],
});

const FIRST = civilDate(2020, 1, 1);
const HISTORY = 12;
const GAP: readonly number[] = [365, 182, 30, 365, 30, 180, 7, 365];
const ENVIRONMENTS = ["office", "workshop", "site"] as const;

/**
 * Assets from a number on, each with twelve inspections on days of its own, every other one at a
 * site with a calendar.
 */
export function dueCases(from: number, count: number): DueCase[] {
  return Array.from({ length: count }, (_, index) => {
    const at = from + index;
    const kind = at % MIX.length;
    const start = FIRST + ((at * 7919) % 1500);
    const done = Array.from({ length: HISTORY }, (_, turn): DoneRecord => {
      const on = start + turn * (GAP[kind] ?? 1) - ((at + turn) % 5 === 0 ? 3 : 0);
      return {
        entry: `entry-${at}-${turn}`,
        on: on as CivilDate,
        at: on * 86_400_000,
        counts: true,
        next: {},
      };
    });
    const facts: DueFacts = {
      done,
      registered: FIRST,
      particulars: {
        environment: ENVIRONMENTS[at % 3] ?? "site",
        class: at % 2 === 0 ? "I" : "II",
      },
      ...((at >> 3) % 2 === 0 ? { calendar: CALENDAR } : {}),
    };
    return { rule: MIX[kind] as IntervalRule, facts };
  });
}

/** Why a day is shut, by its ISO date: for whoever has no calendar of ours. */
export const isShut = (day: CivilDate): boolean => CALENDAR.shut(day) !== null;
