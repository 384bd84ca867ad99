import type { FromSchema } from "json-schema-to-ts";
import { SHA256 } from "../shared/patterns.ts";

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
  },
  required: ["value", "unit"],
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
  graded: { oneOf: [{ type: "integer" }, { $ref: "#/$defs/absent" }] },
  reading: { oneOf: [reading, { $ref: "#/$defs/absent" }] },
  text: { oneOf: [...writtenText.oneOf, { $ref: "#/$defs/absent" }] },
  photo: {
    oneOf: [
      { type: "array", items: { type: "string", pattern: SHA256 }, minItems: 1, maxItems: 12 },
      { $ref: "#/$defs/absent" },
    ],
  },
} as const;

export const POINT_KINDS = ["check", "choice", "graded", "reading", "text", "photo"] as const;
export type PointKind = (typeof POINT_KINDS)[number];

export type WrittenText = FromSchema<typeof writtenText>;
export type Absent = FromSchema<typeof absent>;
export type Reading = FromSchema<typeof reading>;
export type CheckAnswer = "ok" | "not-ok" | Absent;
export type ChoiceAnswer = string | Absent;
export type GradedAnswer = number | Absent;
export type ReadingAnswer = Reading | Absent;
export type TextAnswer = WrittenText | Absent;
export type PhotoAnswer = readonly string[] | Absent;
export type Answer =
  | CheckAnswer
  | ChoiceAnswer
  | GradedAnswer
  | ReadingAnswer
  | TextAnswer
  | PhotoAnswer;

/** Answers by point name. A name that is missing is a question nobody answered. */
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
