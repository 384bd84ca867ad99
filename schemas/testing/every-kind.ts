import type { Checklist } from "../checklist/meta-schema.ts";

/** One point of each kind, each narrowed as far as its kind allows. Limits are invented. */
export const EVERY_KIND: Checklist = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  dialect: "urn:roundbook:checklist:1",
  title: "Every kind of point",
  type: "object",
  groups: [{ id: "looking", title: "Looking", points: ["intact", "finish"], groupAnswer: true }],
  properties: {
    intact: {
      title: "Intact?",
      $ref: "#/$defs/check",
      limits: [{ accept: ["ok"], basis: "Invented" }],
    },
    closer: {
      title: "Closer",
      $ref: "#/$defs/choice",
      oneOf: [
        { const: "overhead", title: "Overhead" },
        { const: "floor", title: "Floor spring" },
        { $ref: "#/$defs/absent" },
      ],
    },
    lock: {
      title: "Lock",
      $ref: "#/$defs/choice",
      oneOf: [
        { const: "yes", title: "Fitted" },
        { const: "no", title: "None" },
      ],
    },
    finish: { title: "Finish", $ref: "#/$defs/graded", minimum: 1, maximum: 5 },
    // A name that every object inherits: it is a point only where it is an own property.
    constructor: {
      title: "Gap",
      $ref: "#/$defs/reading" as const,
      quantity: { unit: "mm", alsoIn: ["cm"] },
      limits: [{ min: 2, max: 4, basis: "Invented" }],
    },
    remark: { title: "Remark", $ref: "#/$defs/text", maxLength: 5 },
    picture: { title: "Picture", $ref: "#/$defs/photo" },
  },
  scores: {
    condition: {
      title: "Condition",
      of: ["finish"],
      method: "share-of-maximum",
      round: { rule: "half-up", decimals: 0 },
      bands: [
        { title: "Good", from: 60, outcome: "pass", next: "P3Y" },
        { title: "Poor", from: 0, outcome: "fail", next: "at-once" },
      ],
    },
  },
  additionalProperties: false,
};
