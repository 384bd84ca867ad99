import type { FromSchema } from "json-schema-to-ts";
import { NAME, UUID } from "../shared/patterns.ts";
import { INTERVAL_RULE_SCHEMA } from "./rule-schema.ts";

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
    /** Shorter intervals of the same type that this check stands for when it falls in their window. */
    covers: {
      type: "array",
      items: { type: "string", pattern: UUID },
      maxItems: 20,
      uniqueItems: true,
    },
  },
  required: ["title", "assetType", "checklist", "rule"],
  additionalProperties: false,
} as const;

export type IntervalDefinition = FromSchema<typeof INTERVAL_SCHEMA>;
