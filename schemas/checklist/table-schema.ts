import { NOT_BLANK } from "../shared/patterns.ts";

/** Words for people: blanks alone would leave a point or an option without its question. */
export const text = { type: "string", maxLength: 500, pattern: NOT_BLANK } as const;
export const formula = { type: "string", minLength: 1, maxLength: 500 } as const;
export const scalar = { type: ["number", "string", "boolean"] } as const;

/** A value, a list of values, a range, or "any". */
export const cell = {
  oneOf: [
    scalar,
    { type: "array", items: scalar, minItems: 1, maxItems: 100 },
    {
      type: "object",
      properties: {
        any: { const: true },
        min: { type: "number" },
        max: { type: "number" },
        exclusiveMin: { type: "number" },
        exclusiveMax: { type: "number" },
      },
      minProperties: 1,
      additionalProperties: false,
    },
  ],
} as const;

/**
 * A decision table with an OMG DMN hit policy. A collecting table takes the least or greatest
 * outcome of the rules that fit, and declares how many have to, so that a lost row is noticed.
 */
export const table = {
  type: "object",
  properties: {
    policy: { enum: ["unique", "any", "first", "collect"] },
    aggregate: { enum: ["min", "max"] },
    expect: { type: "integer", minimum: 1, maximum: 500 },
    inputs: { type: "array", items: formula, minItems: 1, maxItems: 8 },
    rules: {
      type: "array",
      minItems: 1,
      maxItems: 500,
      items: {
        type: "object",
        properties: {
          when: { type: "array", items: cell, minItems: 1, maxItems: 8 },
          // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
          then: { type: ["number", "string"] },
          basis: text,
        },
        required: ["when", "then"],
        additionalProperties: false,
      },
    },
  },
  required: ["policy", "inputs", "rules"],
  additionalProperties: false,
} as const;
