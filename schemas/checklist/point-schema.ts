import type { FromSchema } from "json-schema-to-ts";
import { DURATION, NAME } from "../shared/patterns.ts";
import { ABSENCE_REASONS, LONGEST_WAIT, POINT_KINDS } from "./answer-types.ts";
import { limit } from "./limit-schema.ts";
import { formula, text } from "./table-schema.ts";

export const unit = { type: "string", minLength: 1, maxLength: 40 } as const;
export const name = { type: "string", pattern: NAME } as const;
/** Text points and particulars: run by a linear-time engine only, never by the browser's own. */
export const pattern = { type: "string", minLength: 1, maxLength: 200 } as const;

const evidenceRule = {
  type: "object",
  properties: {
    kind: { enum: ["photo", "note"] },
    on: {
      type: "array",
      items: { enum: ["pass", "advisory", "fail", "undecided"] },
      minItems: 1,
      uniqueItems: true,
    },
    atLeast: { type: "integer", minimum: 1, maximum: 12 },
  },
  required: ["kind", "on"],
  additionalProperties: false,
} as const;

const ask = {
  type: "object",
  properties: {
    when: formula,
    mandatory: { type: "boolean" },
    absentAllowed: { type: "array", items: { enum: ABSENCE_REASONS }, uniqueItems: true },
    evidence: { type: "array", items: evidenceRule, maxItems: 8 },
    /** Seconds from the start of the wait to the reading: 60 s of running water. */
    wait: {
      type: "object",
      properties: {
        atLeast: { type: "number", minimum: 0, maximum: LONGEST_WAIT },
        atMost: { type: "number", exclusiveMinimum: 0, maximum: LONGEST_WAIT },
      },
      minProperties: 1,
      additionalProperties: false,
    },
  },
  additionalProperties: false,
} as const;

const quantity = {
  type: "object",
  properties: {
    unit,
    alsoIn: { type: "array", items: unit, maxItems: 8, uniqueItems: true },
    decimals: { type: "integer", minimum: 0, maximum: 9 },
    plausible: {
      type: "object",
      properties: { min: { type: "number" }, max: { type: "number" } },
      additionalProperties: false,
    },
  },
  required: ["unit"],
  additionalProperties: false,
} as const;

const grade = {
  type: "object",
  properties: {
    means: { enum: ["danger-now", "by-a-date", "observation"] },
    within: { type: "string", pattern: DURATION },
  },
  required: ["means"],
  additionalProperties: false,
} as const;

const option = {
  type: "object",
  properties: { const: { type: "string", minLength: 1, maxLength: 200 }, title: text },
  required: ["const", "title"],
  additionalProperties: false,
} as const;

export const COMBINATIONS = ["each", "highest", "lowest", "mean"] as const;
export type Combination = (typeof COMBINATIONS)[number];

export const point = {
  type: "object",
  properties: {
    $ref: { enum: POINT_KINDS.map((kind) => `#/$defs/${kind}` as const) },
    title: text,
    description: { type: "string", minLength: 1, maxLength: 2000 },
    /** Options of a choice. */
    oneOf: {
      type: "array",
      minItems: 2,
      maxItems: 101,
      items: {
        oneOf: [
          option,
          {
            type: "object",
            properties: { $ref: { const: "#/$defs/absent" } },
            required: ["$ref"],
            additionalProperties: false,
          },
        ],
      },
    },
    /** Options of a choice of several. */
    items: {
      type: "object",
      properties: { oneOf: { type: "array", minItems: 2, maxItems: 100, items: option } },
      required: ["oneOf"],
      additionalProperties: false,
    },
    minimum: { type: "integer" },
    maximum: { type: "integer" },
    maxLength: { type: "integer", minimum: 1, maximum: 4000 },
    pattern,
    quantity,
    /** How many readings of one quantity, and what stands for all of them. */
    several: {
      type: "object",
      properties: {
        count: { oneOf: [{ type: "integer", minimum: 2, maximum: 50 }, formula] },
        combine: { enum: COMBINATIONS },
      },
      required: ["count", "combine"],
      additionalProperties: false,
    },
    /** Formula of a calculated point, in its quantity's unit. */
    calculate: formula,
    limits: { type: "array", items: limit, minItems: 1, maxItems: 20 },
    ask,
    grade,
    /** The block the point came from: points of one block are one point in every checklist. */
    block: name,
  },
  required: ["$ref", "title"],
  additionalProperties: false,
} as const;

export type PointDefinition = FromSchema<typeof point>;
export type QuantityDefinition = FromSchema<typeof quantity>;
export type AskDefinition = FromSchema<typeof ask>;
export type GradeDefinition = FromSchema<typeof grade>;
export type SeveralDefinition = NonNullable<PointDefinition["several"]>;
