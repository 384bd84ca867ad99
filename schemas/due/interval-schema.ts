import type { FromSchema } from "json-schema-to-ts";
import { DURATION, NAME, UUID } from "../shared/patterns.ts";

const duration = { type: "string", pattern: DURATION } as const;

const INTERVAL_RULE_SCHEMA = {
  oneOf: [
    {
      type: "object",
      properties: {
        kind: { const: "from-last-done" },
        every: duration,
        early: duration,
        late: duration,
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
      },
      required: ["kind", "score"],
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
export type IntervalDefinition = FromSchema<typeof INTERVAL_SCHEMA>;
