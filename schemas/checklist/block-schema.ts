import type { FromSchema } from "json-schema-to-ts";
import { CHECKLIST_SCHEMA } from "./meta-schema.ts";
import { name } from "./point-schema.ts";
import { text } from "./table-schema.ts";

export const BLOCK_DIALECT = "urn:roundbook:block:1";

const { properties: points, particulars, values, groups, wording } = CHECKLIST_SCHEMA.properties;

/**
 * A block: points that several checklists take in, with what they need. Its points are one point
 * each in every checklist, so that their readings are comparable.
 */
export const BLOCK_SCHEMA = {
  $id: "urn:roundbook:meta-schema:block:1",
  $schema: CHECKLIST_SCHEMA.$schema,
  type: "object",
  properties: {
    dialect: { const: BLOCK_DIALECT },
    /** The name it is included by, for good. */
    name,
    title: text,
    points,
    particulars,
    values,
    groups,
    /** By language tag, then by JSON Pointer into the block: `/points/plug/title`. */
    wording,
  },
  required: ["dialect", "name", "title", "points"],
  additionalProperties: false,
} as const;

export type Block = FromSchema<typeof BLOCK_SCHEMA>;
