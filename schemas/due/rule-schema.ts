import type { FromSchema } from "json-schema-to-ts";
import { table } from "../checklist/table-schema.ts";
import { CIVIL_DATE, DURATION, NAME, UUID } from "../shared/patterns.ts";

const duration = { type: "string", pattern: DURATION } as const;
const date = { type: "string", pattern: CIVIL_DATE } as const;
const amount = { type: "number", exclusiveMinimum: 0 } as const;

/** What every kind of rule may add. */
const common = {
  /** The law's longest time from one to the next: nothing moves a date past it. */
  neverAfter: duration,
  /** How long after it was registered an asset is first due; absent: on that day. */
  first: duration,
  /** What becomes of a date on a weekday off or a holiday; absent: roll-back. */
  onDayOff: { enum: ["roll-back", "roll-forward", "due-anyway"] },
  /** What becomes of a date on a day the place is closed; absent: roll-back. */
  whenClosed: {
    enum: [
      /** To the last open day before; a late margin stays. */
      "roll-back",
      /** To the last open day before, and done by then. */
      "bring-forward",
      "due-anyway",
      /** On the first open day after, and not used before it is done. */
      "on-reopening",
      /** Not expected while closed, and due on the first open day after. */
      "excused",
    ],
  },
} as const;
const margins = { early: duration, late: duration } as const;

const rule = <const K extends string, const P, const R extends readonly string[]>(
  kind: K,
  properties: P,
  required: R,
) =>
  ({
    type: "object",
    properties: { kind: { const: kind }, ...properties, ...common },
    required: ["kind", ...required],
    additionalProperties: false,
  }) as const;

const worst = {
  type: "array",
  items: { type: ["number", "string", "boolean"] },
  uniqueItems: true,
} as const;

export const INTERVAL_RULE_SCHEMA = {
  oneOf: [
    rule("from-last-done", { every: duration, ...margins }, ["every"]),
    rule("by-result", { score: { type: "string", pattern: NAME }, ...margins }, ["score"]),
    rule(
      "anniversary",
      {
        every: duration,
        /**
         * A date of the series, which has no beginning and stands when done too soon; absent: the
         * day it was first done.
         */
        anchor: date,
        /** The time ending with the due day in which doing it keeps the anniversary. */
        within: duration,
        late: duration,
        afterLate: { enum: ["restart", "keep"] },
      },
      ["every", "within", "afterLate"],
    ),
    rule(
      "each-period",
      {
        /** Weeks begin on Monday (ISO 8601); the others as the calendar year divides. */
        period: { enum: ["week", "month", "quarter", "half-year", "year"] },
        /** Due on this day of the period, from 1, or on its last; absent: on its last. */
        day: { type: "integer", minimum: 1, maximum: 366 },
      },
      ["period"],
    ),
    rule(
      "spacing",
      {
        min: duration,
        max: duration,
        /** Due after this long; absent: after `max`. */
        every: duration,
      },
      ["min", "max"],
    ),
    rule(
      "recurrence",
      {
        /** The value of an RRULE property (RFC 5545 §3.3.10, RFC 7529), of days or coarser. */
        rrule: { type: "string", minLength: 1, maxLength: 1000 },
        /** DTSTART. */
        start: date,
        ...margins,
      },
      ["rrule", "start"],
    ),
    rule(
      "on-event",
      {
        after: {
          type: "array",
          items: { enum: ["repaired", "modified", "returned", "reopened"] },
          minItems: 1,
          uniqueItems: true,
        },
        /** Due so long after the event; `P0D` on its day. */
        within: duration,
        /** So long before a known reopening it may be done already. */
        early: duration,
        /** Not to be used from the event on until it is done. */
        blocks: { type: "boolean" },
      },
      ["after", "within"],
    ),
    rule(
      "on-usage",
      {
        /** The checklist that reads the meter; absent: the one of the interval. */
        checklist: { type: "string", pattern: UUID },
        /** A point of it that is a reading. */
        point: { type: "string", pattern: NAME },
        every: amount,
        early: amount,
        late: amount,
        /** UCUM code that `every` and the margins are in. */
        unit: { type: "string", minLength: 1, maxLength: 40 },
        /** At the latest so long after it was done, however little it was used. */
        orAfter: duration,
      },
      ["point", "every", "unit"],
    ),
    rule(
      "by-risk",
      {
        /** Each outcome is an ISO 8601 duration, each input `asset.` and a particular. */
        table,
        /** By particular: from the mildest value to the worst, or which way a number worsens. */
        worse: {
          type: "object",
          propertyNames: { pattern: NAME },
          additionalProperties: {
            anyOf: [{ enum: ["up", "down"] }, { ...worst, minItems: 2, maxItems: 100 }],
          },
          maxProperties: 8,
        },
        ...margins,
      },
      ["table", "worse"],
    ),
  ],
} as const;

export type IntervalRule = FromSchema<typeof INTERVAL_RULE_SCHEMA>;
export type WhenClosed = NonNullable<IntervalRule["whenClosed"]>;
export type OnDayOff = NonNullable<IntervalRule["onDayOff"]>;

/** The rule of one kind. */
export type RuleOf<Kind extends IntervalRule["kind"]> = Extract<IntervalRule, { kind: Kind }>;
