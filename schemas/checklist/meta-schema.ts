import type { FromSchema } from "json-schema-to-ts";
import { DURATION, NAME } from "../shared/patterns.ts";
import { ABSENCE_REASONS, POINT_KINDS } from "./answer-types.ts";
import { type cell, formula, scalar, table, text } from "./table-schema.ts";

export const DIALECT = "urn:roundbook:checklist:1";
export const JSON_SCHEMA_DRAFT = "https://json-schema.org/draft/2020-12/schema";

const unit = { type: "string", minLength: 1, maxLength: 40 } as const;
const name = { type: "string", pattern: NAME } as const;
/** A number, or the name of a value, or a formula. */
const bound = { oneOf: [{ type: "number" }, formula] } as const;

const particular = {
  type: "object",
  properties: {
    title: text,
    description: text,
    /** Place in forms: JSON objects have no order of their own. */
    order: { type: "integer", minimum: 1 },
    type: { enum: ["number", "integer", "string", "boolean"] },
    unit,
    enum: { type: "array", items: scalar, minItems: 1, maxItems: 200 },
    minimum: { type: "number" },
    maximum: { type: "number" },
    maxLength: { type: "integer", minimum: 1, maximum: 1000 },
  },
  required: ["title"],
  additionalProperties: false,
} as const;

const value = {
  type: "object",
  properties: {
    title: text,
    unit,
    const: { type: "number" },
    formula,
    table,
    basis: text,
  },
  additionalProperties: false,
  oneOf: [{ required: ["const"] }, { required: ["formula"] }, { required: ["table"] }],
} as const;

const limit = {
  type: "object",
  properties: {
    min: bound,
    max: bound,
    exclusiveMin: bound,
    exclusiveMax: bound,
    accept: { type: "array", items: { type: ["string", "integer"] }, minItems: 1, maxItems: 100 },
    severity: { enum: ["fail", "advisory"] },
    when: formula,
    basis: text,
  },
  additionalProperties: false,
} as const;

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

const point = {
  type: "object",
  properties: {
    $ref: { enum: POINT_KINDS.map((kind) => `#/$defs/${kind}` as const) },
    title: text,
    description: { type: "string", minLength: 1, maxLength: 2000 },
    oneOf: {
      type: "array",
      minItems: 2,
      maxItems: 101,
      items: {
        oneOf: [
          {
            type: "object",
            properties: { const: { type: "string", minLength: 1, maxLength: 200 }, title: text },
            required: ["const", "title"],
            additionalProperties: false,
          },
          {
            type: "object",
            properties: { $ref: { const: "#/$defs/absent" } },
            required: ["$ref"],
            additionalProperties: false,
          },
        ],
      },
    },
    minimum: { type: "integer" },
    maximum: { type: "integer" },
    maxLength: { type: "integer", minimum: 1, maximum: 4000 },
    quantity,
    limits: { type: "array", items: limit, minItems: 1, maxItems: 20 },
    ask,
    grade,
  },
  required: ["$ref", "title"],
  additionalProperties: false,
} as const;

const score = {
  type: "object",
  properties: {
    title: text,
    of: { type: "array", items: name, minItems: 1, maxItems: 500, uniqueItems: true },
    method: { enum: ["share-of-maximum"] },
    round: {
      type: "object",
      properties: {
        rule: { enum: ["half-up", "half-even", "half-away", "down", "up"] },
        decimals: { type: "integer", minimum: 0, maximum: 6 },
      },
      required: ["rule", "decimals"],
      additionalProperties: false,
    },
    bands: {
      type: "array",
      minItems: 1,
      maxItems: 20,
      items: {
        type: "object",
        properties: {
          title: text,
          from: { type: "number" },
          outcome: { enum: ["pass", "advisory", "fail"] },
          next: { oneOf: [{ type: "string", pattern: DURATION }, { const: "at-once" }] },
          basis: text,
        },
        required: ["title", "from"],
        additionalProperties: false,
      },
    },
    basis: text,
  },
  required: ["title", "of", "method", "round", "bands"],
  additionalProperties: false,
} as const;

const mapOf = <const S>(items: S, max: number) =>
  ({
    type: "object",
    propertyNames: { pattern: NAME },
    additionalProperties: items,
    maxProperties: max,
  }) as const;

/**
 * The dialect as a JSON Schema 2020-12 document. A checklist that validates here is well formed;
 * `lintChecklist` finds what a schema cannot say.
 */
export const CHECKLIST_SCHEMA = {
  $id: "urn:roundbook:meta-schema:checklist:1",
  $schema: JSON_SCHEMA_DRAFT,
  type: "object",
  properties: {
    $schema: { const: JSON_SCHEMA_DRAFT },
    dialect: { const: DIALECT },
    title: text,
    description: { type: "string", minLength: 1, maxLength: 2000 },
    language: { type: "string", pattern: "^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$" },
    minutes: { type: "number", exclusiveMinimum: 0, maximum: 1440 },
    type: { const: "object" },
    particulars: mapOf(particular, 100),
    values: mapOf(value, 100),
    cautions: {
      type: "array",
      items: { type: "string", minLength: 1, maxLength: 2000 },
      maxItems: 20,
    },
    groups: {
      type: "array",
      maxItems: 100,
      items: {
        type: "object",
        properties: {
          id: name,
          title: text,
          points: { type: "array", items: name, maxItems: 1000, uniqueItems: true },
          groupAnswer: { type: "boolean" },
        },
        required: ["id", "title", "points"],
        additionalProperties: false,
      },
    },
    properties: mapOf(point, 1000),
    scores: mapOf(score, 20),
    additionalProperties: { const: false },
    $defs: { type: "object" },
  },
  required: ["$schema", "dialect", "title", "type", "properties", "additionalProperties"],
  additionalProperties: false,
} as const;

export type Checklist = FromSchema<typeof CHECKLIST_SCHEMA>;
export type PointDefinition = FromSchema<typeof point>;
export type QuantityDefinition = FromSchema<typeof quantity>;
export type LimitDefinition = FromSchema<typeof limit>;
export type AskDefinition = FromSchema<typeof ask>;
export type GradeDefinition = FromSchema<typeof grade>;
export type ParticularDefinition = FromSchema<typeof particular>;
export type ValueDefinition = FromSchema<typeof value>;
export type TableDefinition = FromSchema<typeof table>;
export type TableCell = FromSchema<typeof cell>;
export type ScoreDefinition = FromSchema<typeof score>;
export const PARTICULARS_SCHEMA = mapOf(particular, 100);
export type ParticularDefinitions = Readonly<Record<string, ParticularDefinition>>;
