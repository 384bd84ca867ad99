import fc from "fast-check";
import { type Calendar, calendarOf } from "../due/calendar.ts";
import type { DueEvent, DueFacts, MeterReading } from "../due/facts.ts";
import type { IntervalRule, RuleOf } from "../due/rule-schema.ts";
import type { DoneRecord } from "../due/window.ts";
import type { CivilDate } from "../shared/ids.ts";
import { BANK_HOLIDAYS, WEEKEND } from "./bank-holidays.ts";
import { day } from "./due-records.ts";

const days = (min: number, max: number) => fc.integer({ min, max }).map((count) => `P${count}D`);
const months = (min: number, max: number) => fc.integer({ min, max }).map((count) => `P${count}M`);
const maybe = <T>(item: fc.Arbitrary<T>) => fc.option(item, { nil: undefined, freq: 2 });

const table: RuleOf<"by-risk">["table"] = {
  policy: "unique",
  inputs: ["asset.environment"],
  rules: [
    ["office", "P2Y"],
    ["workshop", "P6M"],
    ["site", "P3M"],
  ].map(([environment = "", then = ""]) => ({ when: [environment], then })),
};

type Kind = IntervalRule["kind"];
/** What each kind says of itself; margins are shorter than the interval. */
const KINDS: { readonly [K in Kind]: fc.Arbitrary<Partial<RuleOf<K>>> } = {
  "from-last-done": fc.record({
    every: months(1, 36),
    early: maybe(days(0, 14)),
    late: maybe(days(0, 14)),
  }),
  "by-result": fc.record({
    score: fc.constant("score"),
    early: maybe(days(0, 14)),
    late: maybe(days(0, 14)),
  }),
  anniversary: fc.record({
    every: fc.oneof(months(2, 36), days(60, 400)),
    anchor: maybe(fc.constantFrom("2024-02-29", "2026-01-31", "2030-06-15")),
    within: days(1, 30),
    late: maybe(days(0, 20)),
    afterLate: fc.constantFrom("restart" as const, "keep" as const),
  }),
  "each-period": fc.record({
    period: fc.constantFrom(...(["week", "month", "quarter", "half-year", "year"] as const)),
    day: maybe(fc.integer({ min: 1, max: 7 })),
  }),
  spacing: fc.record({ min: days(1, 60), max: days(60, 400) }),
  recurrence: fc.record({
    rrule: fc.constantFrom(
      "FREQ=DAILY",
      "FREQ=WEEKLY;BYDAY=MO,TH",
      "FREQ=MONTHLY;BYMONTHDAY=-1",
      "FREQ=YEARLY;BYMONTH=4,10;BYDAY=1MO",
      "FREQ=MONTHLY;COUNT=9",
      "FREQ=WEEKLY;UNTIL=20270101",
    ),
    start: fc.constantFrom("2024-01-31", "2026-03-02"),
    early: maybe(days(0, 9)),
    late: maybe(days(0, 9)),
  }),
  "on-event": fc.record({
    after: fc
      .subarray(["repaired", "modified", "returned", "reopened"] as const, { minLength: 1 })
      .map((after) => [...after]),
    within: days(0, 30),
    early: maybe(days(0, 30)),
    blocks: maybe(fc.boolean()),
  }),
  "on-usage": fc.record({
    point: fc.constant("hours"),
    every: fc.integer({ min: 50, max: 1000 }),
    unit: fc.constant("h"),
    orAfter: maybe(months(1, 24)),
  }),
  "by-risk": fc.record({
    table: fc.constant(table),
    worse: fc.constant({ environment: ["office", "workshop", "site"] }),
  }),
};

const common = fc.record({
  neverAfter: maybe(days(30, 500)),
  first: maybe(months(0, 12)),
  onDayOff: maybe(fc.constantFrom(...(["roll-back", "roll-forward", "due-anyway"] as const))),
  whenClosed: maybe(
    fc.constantFrom(
      ...(["roll-back", "bring-forward", "due-anyway", "on-reopening", "excused"] as const),
    ),
  ),
});

const given = <T extends object>(value: T): T =>
  Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined)) as T;

/** A rule of one kind, with anything that every kind may add. */
export const anyRuleOf = <K extends Kind>(kind: K): fc.Arbitrary<RuleOf<K>> =>
  fc.tuple(KINDS[kind], common).map(([own, more]) => given({ kind, ...own, ...more }) as RuleOf<K>);

export const RULE_KINDS = Object.keys(KINDS) as readonly Kind[];
export const anyIntervalRule: fc.Arbitrary<IntervalRule> = fc.oneof(...RULE_KINDS.map(anyRuleOf));

export const anyDay = fc.integer({
  min: day("2024-06-01"),
  max: day("2026-12-31"),
}) as fc.Arbitrary<CivilDate>;
/** Few instants, so that some are the same. */
const at = fc.option(fc.integer({ min: 0, max: 3 }));

const record: fc.Arbitrary<DoneRecord> = fc.record({
  entry: fc.uuid(),
  on: anyDay,
  at,
  counts: fc.boolean(),
  next: fc.record({ score: fc.constantFrom("P1Y", "P6M", "at-once", null) }),
  broughtForward: fc.boolean(),
});
const event: fc.Arbitrary<DueEvent> = fc.record({
  entry: fc.uuid(),
  kind: fc.constantFrom(...(["repaired", "modified", "returned"] as const)),
  on: anyDay,
  at,
});
const reading: fc.Arbitrary<MeterReading> = fc.record({
  entry: fc.uuid(),
  on: anyDay,
  at,
  value: fc.integer({ min: 0, max: 2000 }),
  unit: fc.constantFrom("h", "min"),
});

const ESTATE: Calendar = calendarOf({
  weekdays: WEEKEND,
  holidays: BANK_HOLIDAYS.map((date) => ({ date, reason: "bank holiday" })),
  closures: [{ from: "2026-07-23", to: "2026-09-01", reason: "summer" }],
  seasons: [{ from: "12-20", to: "01-06", reason: "winter" }],
});

const each = { selector: (one: { readonly entry: string }) => one.entry, maxLength: 6 };

/** Facts of every kind, of an estate that is now open and now closed. */
export const anyFacts: fc.Arbitrary<DueFacts> = fc
  .record({
    done: fc.uniqueArray(record, each),
    registered: fc.constant(day("2024-05-01")),
    events: fc.uniqueArray(event, each),
    meter: fc.uniqueArray(reading, each),
    particulars: fc.constantFrom({ environment: "site" }, { environment: "office" }, {}),
    calendar: maybe(fc.constant(ESTATE)),
    override: maybe(
      fc.record({
        rule: anyIntervalRule,
        reason: fc.constant("of its own"),
        until: fc.option(anyDay),
      }),
    ),
  })
  .map((facts) => given(facts) as DueFacts);
