import type { FromSchema } from "json-schema-to-ts";
import { CIVIL_DATE, INSTANT, SHA256 } from "../shared/patterns.ts";

/** Why there is no answer. Only the reasons a point allows keep it out of the count. */
export const ABSENCE_REASONS = [
  "not-applicable",
  "not-measurable",
  "not-checked",
  "no-access",
] as const;
export type AbsenceReason = (typeof ABSENCE_REASONS)[number];

export const COMPARATORS = ["<", "<=", ">=", ">"] as const;
export type Comparator = (typeof COMPARATORS)[number];

/** Seconds that a wait may last: a day. */
export const LONGEST_WAIT = 86_400;

/**
 * What a person wrote, or the salted SHA-256 commitment that stands for it in the log, so that
 * personal data can be erased without breaking the log.
 */
const writtenText = {
  oneOf: [
    { type: "string", maxLength: 4000 },
    {
      type: "object",
      properties: { commit: { type: "string", pattern: SHA256 } },
      required: ["commit"],
      additionalProperties: false,
    },
  ],
} as const;

const absent = {
  type: "object",
  properties: {
    absent: {
      type: "object",
      properties: { reason: { enum: ABSENCE_REASONS }, note: writtenText },
      required: ["reason"],
      additionalProperties: false,
    },
  },
  required: ["absent"],
  additionalProperties: false,
} as const;

const reading = {
  type: "object",
  properties: {
    value: { type: "number" },
    unit: { type: "string", minLength: 1, maxLength: 40 },
    comparator: { enum: COMPARATORS },
    /** Seconds waited before it was read. */
    elapsed: { type: "number", minimum: 0, maximum: LONGEST_WAIT },
  },
  required: ["value", "unit"],
  additionalProperties: false,
} as const;

/** A sample taken for a laboratory: pending until its result comes. */
const sample = {
  type: "object",
  properties: {
    /** What stands on the bottle. */
    sample: { type: "string", minLength: 1, maxLength: 100 },
    takenAt: { type: "string", pattern: INSTANT },
    result: reading,
  },
  required: ["sample"],
  additionalProperties: false,
} as const;

/** A declaration by a named person; the drawing, by its SHA-256, is only evidence. */
const signature = {
  type: "object",
  properties: { signedBy: writtenText, drawing: { type: "string", pattern: SHA256 } },
  required: ["signedBy"],
  additionalProperties: false,
} as const;

/**
 * The answer types, embedded under `$defs` when a checklist is issued, so that the document alone
 * lets any JSON Schema 2020-12 validator tell a well-formed answer. `minimum`, `maximum`, `pattern`
 * and the like beside a point's `$ref` bind answers only: JSON Schema applies them by type, and an
 * absence is an object.
 */
export const ANSWER_DEFS = {
  absent,
  writtenText,
  check: { oneOf: [{ enum: ["ok", "not-ok"] }, { $ref: "#/$defs/absent" }] },
  choice: { oneOf: [{ type: "string", minLength: 1, maxLength: 200 }, { $ref: "#/$defs/absent" }] },
  choices: {
    oneOf: [
      {
        type: "array",
        items: { type: "string", minLength: 1, maxLength: 200 },
        minItems: 1,
        maxItems: 100,
        uniqueItems: true,
      },
      { $ref: "#/$defs/absent" },
    ],
  },
  graded: { oneOf: [{ type: "integer" }, { $ref: "#/$defs/absent" }] },
  count: { oneOf: [{ type: "integer", minimum: 0 }, { $ref: "#/$defs/absent" }] },
  reading: { oneOf: [reading, { $ref: "#/$defs/absent" }] },
  readings: {
    oneOf: [
      { type: "array", items: reading, minItems: 1, maxItems: 50 },
      { $ref: "#/$defs/absent" },
    ],
  },
  date: { oneOf: [{ type: "string", pattern: CIVIL_DATE }, { $ref: "#/$defs/absent" }] },
  sample: { oneOf: [sample, { $ref: "#/$defs/absent" }] },
  signature: { oneOf: [signature, { $ref: "#/$defs/absent" }] },
  /** Worked out, never answered. */
  calculated: { not: {} },
  text: { oneOf: [...writtenText.oneOf, { $ref: "#/$defs/absent" }] },
  photo: {
    oneOf: [
      { type: "array", items: { type: "string", pattern: SHA256 }, minItems: 1, maxItems: 12 },
      { $ref: "#/$defs/absent" },
    ],
  },
} as const;

export const POINT_KINDS = [
  "check",
  "choice",
  "choices",
  "graded",
  "reading",
  "readings",
  "count",
  "date",
  "text",
  "photo",
  "signature",
  "sample",
  "calculated",
] as const;
export type PointKind = (typeof POINT_KINDS)[number];

export type WrittenText = FromSchema<typeof writtenText>;
export type Absent = FromSchema<typeof absent>;
export type Reading = FromSchema<typeof reading>;
export type CheckAnswer = "ok" | "not-ok" | Absent;
export type ChoiceAnswer = string | Absent;
export type GradedAnswer = number | Absent;
export type ReadingAnswer = Reading | Absent;
export type Sample = FromSchema<typeof sample>;
export type Signature = FromSchema<typeof signature>;
export type ChoicesAnswer = readonly string[] | Absent;
export type CountAnswer = number | Absent;
export type ReadingsAnswer = readonly Reading[] | Absent;
/** ISO 8601 calendar date. */
export type DateAnswer = string | Absent;
export type SampleAnswer = Sample | Absent;
export type SignatureAnswer = Signature | Absent;
export type TextAnswer = WrittenText | Absent;
export type PhotoAnswer = readonly string[] | Absent;
export type Answer =
  | CheckAnswer
  | ChoiceAnswer
  | ChoicesAnswer
  | GradedAnswer
  | CountAnswer
  | ReadingAnswer
  | ReadingsAnswer
  | DateAnswer
  | SampleAnswer
  | SignatureAnswer
  | TextAnswer
  | PhotoAnswer;

/**
 * Answers by the point's name, and in a repeat by `point@member`. A name that is missing is a
 * question nobody answered.
 */
export type Answers = Readonly<Record<string, Answer>>;
/** Particulars of an asset by name, in the units their definitions give. */
export type Particulars = Readonly<Record<string, number | string | boolean>>;
/** SHA-256 of each piece of evidence given for a point, by point name. */
export type Evidence = Readonly<Record<string, readonly EvidenceItem[]>>;
export interface EvidenceItem {
  readonly kind: "photo" | "note";
  /** Hash of the photo, absent for a note. */
  readonly sha256?: string;
  readonly note?: WrittenText;
}
