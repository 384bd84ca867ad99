import type { FromSchema } from "json-schema-to-ts";
import { DURATION, LANGUAGE, MEMBER, NAME } from "../shared/patterns.ts";
import { name, pattern, point, unit } from "./point-schema.ts";
import { type cell, formula, scalar, table, text } from "./table-schema.ts";

export type { DecisionRule, LimitDefinition } from "./limit-schema.ts";
export type {
  AskDefinition,
  GradeDefinition,
  PointDefinition,
  QuantityDefinition,
  SeveralDefinition,
} from "./point-schema.ts";

export const DIALECT = "urn:roundbook:checklist:1";
export const JSON_SCHEMA_DRAFT = "https://json-schema.org/draft/2020-12/schema";

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
    pattern,
    format: { const: "date" },
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

const score = {
  type: "object",
  properties: {
    title: text,
    of: { type: "array", items: name, minItems: 1, maxItems: 500, uniqueItems: true },
    /** Each in per cent of the most the answered points allow, or in grades: their sum or mean. */
    method: { enum: ["share-of-maximum", "sum", "mean"] },
    /** How much a point counts; one where none is given. */
    weights: {
      type: "object",
      propertyNames: { pattern: NAME },
      additionalProperties: { type: "integer", minimum: 1, maximum: 1000 },
      maxProperties: 500,
    },
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

const repeat = {
  type: "object",
  properties: {
    /** What one member is called: "Socket", "Leaf". */
    each: text,
    /** How many there are, so that one left out is missed: a number, a particular, a formula. */
    count: { oneOf: [{ type: "integer", minimum: 1, maximum: 99 }, formula] },
    /** Members by name instead of by number. */
    members: {
      type: "array",
      minItems: 1,
      maxItems: 99,
      items: {
        type: "object",
        properties: { id: { type: "string", pattern: MEMBER }, title: text },
        required: ["id", "title"],
        additionalProperties: false,
      },
    },
    atMost: { type: "integer", minimum: 1, maximum: 99 },
  },
  required: ["each"],
  oneOf: [{ required: ["count"] }, { required: ["members"] }],
  additionalProperties: false,
} as const;

const stop = {
  type: "object",
  properties: {
    /** Points whose verdict stops others. */
    after: { type: "array", items: name, minItems: 1, maxItems: 100, uniqueItems: true },
    on: {
      type: "array",
      items: { enum: ["advisory", "fail"] },
      minItems: 1,
      uniqueItems: true,
    },
    points: { type: "array", items: name, minItems: 1, maxItems: 1000, uniqueItems: true },
    groups: { type: "array", items: name, minItems: 1, maxItems: 100, uniqueItems: true },
    /** What the person on the round is told. */
    say: text,
  },
  required: ["after", "on", "say"],
  anyOf: [{ required: ["points"] }, { required: ["groups"] }],
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
  $vocabulary: {
    "https://json-schema.org/draft/2020-12/vocab/core": true,
    "https://json-schema.org/draft/2020-12/vocab/applicator": true,
    "https://json-schema.org/draft/2020-12/vocab/validation": true,
    "https://json-schema.org/draft/2020-12/vocab/meta-data": true,
    "urn:roundbook:vocabulary:asking:1": false,
    "urn:roundbook:vocabulary:judging:1": false,
    "urn:roundbook:vocabulary:wording:1": false,
  },
  type: "object",
  properties: {
    $schema: { const: JSON_SCHEMA_DRAFT },
    dialect: { const: DIALECT },
    title: text,
    description: { type: "string", minLength: 1, maxLength: 2000 },
    language: { type: "string", pattern: LANGUAGE },
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
          repeat,
        },
        required: ["id", "title", "points"],
        additionalProperties: false,
      },
    },
    properties: mapOf(point, 1000),
    scores: mapOf(score, 20),
    stops: { type: "array", items: stop, maxItems: 50 },
    /** Texts in other languages: by language tag, then by JSON Pointer of the text they stand for. */
    wording: {
      type: "object",
      propertyNames: { pattern: LANGUAGE },
      additionalProperties: {
        type: "object",
        additionalProperties: { type: "string", minLength: 1, maxLength: 2000 },
        maxProperties: 5000,
      },
      maxProperties: 20,
    },
    /** Blocks of points to take in; none is left in an issued document. */
    include: {
      type: "array",
      maxItems: 50,
      items: {
        type: "object",
        properties: { block: name },
        required: ["block"],
        additionalProperties: false,
      },
    },
    /** Written when issued, for the points of repeats. */
    patternProperties: { type: "object" },
    propertyNames: { type: "object" },
    additionalProperties: { const: false },
    $defs: { type: "object" },
  },
  required: ["$schema", "dialect", "title", "type", "properties", "additionalProperties"],
  additionalProperties: false,
} as const;

export type Checklist = FromSchema<typeof CHECKLIST_SCHEMA>;
export type ParticularDefinition = FromSchema<typeof particular>;
export type ValueDefinition = FromSchema<typeof value>;
export type TableDefinition = FromSchema<typeof table>;
export type TableCell = FromSchema<typeof cell>;
export type ScoreDefinition = FromSchema<typeof score>;
export type RepeatDefinition = FromSchema<typeof repeat>;
export type StopDefinition = FromSchema<typeof stop>;
export const PARTICULARS_SCHEMA = mapOf(particular, 100);
export type ParticularDefinitions = Readonly<Record<string, ParticularDefinition>>;
