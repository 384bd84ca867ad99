import type { FromSchema } from "json-schema-to-ts";
import { CIVIL_DATE, DURATION } from "../shared/patterns.ts";
import { formula, text } from "./table-schema.ts";

/** A number, or the name of a value, or a formula. */
export const bound = { oneOf: [{ type: "number" }, formula] } as const;

/**
 * A civil date: written out, or counted from the day of the inspection, a particular or another
 * answer by an ISO 8601 duration on the calendar.
 */
const dateBound = {
  oneOf: [
    { type: "string", pattern: CIVIL_DATE },
    {
      type: "object",
      properties: {
        from: { type: "string", pattern: "^(today|(asset|answers)\\.[a-z][a-z0-9_]{0,62})$" },
        plus: { type: "string", pattern: DURATION },
        minus: { type: "string", pattern: DURATION },
      },
      required: ["from"],
      additionalProperties: false,
    },
  ],
} as const;

/** Decision rules of ILAC-G8:09/2019 and JCGM 106:2012. */
export const DECISION_RULES = [
  "simple",
  "guarded-acceptance",
  "guarded-rejection",
  "non-binary",
] as const;
export type DecisionRule = (typeof DECISION_RULES)[number];

const decision = {
  type: "object",
  properties: {
    rule: { enum: DECISION_RULES },
    /** Expanded uncertainty U = 2u, in the point's unit; its formula may name the reading itself. */
    uncertainty: bound,
    /** The guard band is this many times U. */
    guardFactor: { type: "number", exclusiveMinimum: 0, maximum: 3 },
  },
  required: ["rule"],
  additionalProperties: false,
} as const;

const sameAsLast = {
  type: "object",
  properties: {
    within: bound,
    /** What holds when there is no reading before: undecided unless the checklist says otherwise. */
    whenNone: { enum: ["undecided", "not-applied"] },
  },
  required: ["within"],
  additionalProperties: false,
} as const;

export const limit = {
  type: "object",
  properties: {
    min: bound,
    max: bound,
    exclusiveMin: bound,
    exclusiveMax: bound,
    accept: { type: "array", items: { type: ["string", "integer"] }, minItems: 1, maxItems: 100 },
    notBefore: dateBound,
    notAfter: dateBound,
    sameAsLast,
    decision,
    severity: { enum: ["fail", "advisory"] },
    when: formula,
    basis: text,
  },
  additionalProperties: false,
} as const;

export type LimitDefinition = FromSchema<typeof limit>;
export type DateBound = FromSchema<typeof dateBound>;
export type DecisionDefinition = FromSchema<typeof decision>;
export type SameAsLastDefinition = FromSchema<typeof sameAsLast>;
