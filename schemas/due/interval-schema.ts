import type { FromSchema } from "json-schema-to-ts";
import { DURATION, NAME, UUID } from "../shared/patterns.ts";

const duration = { type: "string", pattern: DURATION } as const;

const bounded = {
  /** The law's longest time from one to the next: nothing moves a date past it. */
  neverAfter: duration,
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

const INTERVAL_RULE_SCHEMA = {
  oneOf: [
    {
      type: "object",
      properties: {
        kind: { const: "from-last-done" },
        every: duration,
        early: duration,
        late: duration,
        ...bounded,
      },
      required: ["kind", "every"],
      additionalProperties: false,
    },
    {
      type: "object",
      properties: {
        kind: { const: "by-result" },
        score: { type: "string", pattern: NAME },
        early: duration,
        late: duration,
        ...bounded,
      },
      required: ["kind", "score"],
      additionalProperties: false,
    },
    {
      type: "object",
      properties: {
        kind: { const: "anniversary" },
        every: duration,
        /** The time ending with the due day in which doing it keeps the anniversary. */
        within: duration,
        late: duration,
        afterLate: { enum: ["restart", "keep"] },
        ...bounded,
      },
      required: ["kind", "every", "within", "afterLate"],
      additionalProperties: false,
    },
    {
      type: "object",
      properties: {
        kind: { const: "each-period" },
        /** Weeks begin on Monday (ISO 8601); the others as the calendar year divides. */
        period: { enum: ["week", "month", "quarter", "half-year", "year"] },
        /** Due on this day of the period, from 1, or on its last; absent: on its last. */
        day: { type: "integer", minimum: 1, maximum: 366 },
        ...bounded,
      },
      required: ["kind", "period"],
      additionalProperties: false,
    },
    {
      type: "object",
      properties: {
        kind: { const: "spacing" },
        min: duration,
        max: duration,
        /** Due after this long; absent: after `max`. */
        every: duration,
        ...bounded,
      },
      required: ["kind", "min", "max"],
      additionalProperties: false,
    },
  ],
} as const;

/** When assets of a type are due for a checklist. */
export const INTERVAL_SCHEMA = {
  type: "object",
  properties: {
    title: { type: "string", minLength: 1, maxLength: 200 },
    assetType: { type: "string", pattern: NAME },
    /** The stable id of the checklist, not of one issue of it. */
    checklist: { type: "string", pattern: UUID },
    rule: INTERVAL_RULE_SCHEMA,
    basis: { type: "string", minLength: 1, maxLength: 500 },
  },
  required: ["title", "assetType", "checklist", "rule"],
  additionalProperties: false,
} as const;

export type IntervalRule = FromSchema<typeof INTERVAL_RULE_SCHEMA>;
export type WhenClosed = NonNullable<IntervalRule["whenClosed"]>;
export type IntervalDefinition = FromSchema<typeof INTERVAL_SCHEMA>;

/** The rule of one kind. */
export type RuleOf<Kind extends IntervalRule["kind"]> = Extract<IntervalRule, { kind: Kind }>;
