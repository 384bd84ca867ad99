import type { FromSchema } from "json-schema-to-ts";
import type { Block } from "../checklist/block-schema.ts";
import { PARTICULARS_SCHEMA } from "../checklist/meta-schema.ts";
import { INTERVAL_SCHEMA } from "../due/interval-schema.ts";
import { NAME, UUID } from "../shared/patterns.ts";
import type { Problem } from "../shared/problem.ts";

const label = { type: "string", minLength: 1, maxLength: 200 } as const;
const uuid = { type: "string", pattern: UUID } as const;

/** POST /api/drafts */
export const NEW_DRAFT_SCHEMA = {
  type: "object",
  properties: {
    /** Stable id of the checklist this draft would issue; a new one when absent. */
    checklist: uuid,
    document: { type: "object" },
  },
  required: ["document"],
  additionalProperties: false,
} as const;
export type NewDraft = FromSchema<typeof NEW_DRAFT_SCHEMA>;

/** PUT /api/drafts/:checklist : refused (409) when `revision` is not the stored one. */
export const SAVE_DRAFT_SCHEMA = {
  type: "object",
  properties: { revision: { type: "integer", minimum: 0 }, document: { type: "object" } },
  required: ["revision", "document"],
  additionalProperties: false,
} as const;
export type SaveDraft = FromSchema<typeof SAVE_DRAFT_SCHEMA>;

/** POST /api/drafts/:checklist/issue */
export const ISSUE_DRAFT_SCHEMA = {
  type: "object",
  properties: {
    revision: { type: "integer", minimum: 0 },
    /** Revisions of included blocks as they were seen, by name: others are refused (409). */
    blocks: { type: "object", additionalProperties: { type: "integer", minimum: 0 } },
    reason: { type: "string", maxLength: 1000 },
  },
  required: ["revision"],
  additionalProperties: false,
} as const;
export type IssueDraft = FromSchema<typeof ISSUE_DRAFT_SCHEMA>;

export interface DraftRow {
  readonly checklist: string;
  readonly revision: number;
  /** As typed so far: it need not be a well-formed checklist yet. */
  readonly document: Readonly<Record<string, unknown>>;
  readonly changedAt: string;
  readonly changedBy: string;
  readonly problems: readonly Problem[];
  /** Newest issue, or 0. */
  readonly lastIssue: number;
}

/** PUT /api/blocks/:name : revision 0 begins a block; another than the stored one is refused (409). */
export const SAVE_BLOCK_SCHEMA = {
  type: "object",
  properties: { revision: { type: "integer", minimum: 0 }, block: { type: "object" } },
  required: ["revision", "block"],
  additionalProperties: false,
} as const;
export type SaveBlock = FromSchema<typeof SAVE_BLOCK_SCHEMA>;

/** A checklist that takes a block in: its draft, or its newest issue with the points as they were. */
export interface BlockUser {
  readonly checklist: string;
  readonly title: string;
  /** Null for the draft. */
  readonly issue: number | null;
}

export interface BlockRow {
  readonly name: string;
  readonly revision: number;
  readonly block: Block;
  readonly changedAt: string;
  readonly changedBy: string;
  readonly usedBy: readonly BlockUser[];
}

/** An asset type as it is written in a file. */
export const ASSET_TYPE_SCHEMA = {
  type: "object",
  properties: {
    assetType: { type: "string", pattern: NAME },
    title: label,
    particulars: PARTICULARS_SCHEMA,
    checklists: { type: "array", items: uuid, maxItems: 50, uniqueItems: true },
  },
  required: ["assetType", "title", "particulars", "checklists"],
  additionalProperties: false,
} as const;
export type AssetTypeBody = FromSchema<typeof ASSET_TYPE_SCHEMA>;

/** PUT /api/asset-types/:name : version 0 begins a type; another than the newest is refused (409). */
export const SAVE_ASSET_TYPE_SCHEMA = {
  ...ASSET_TYPE_SCHEMA,
  properties: { ...ASSET_TYPE_SCHEMA.properties, version: { type: "integer", minimum: 0 } },
  required: [...ASSET_TYPE_SCHEMA.required, "version"],
} as const;
export type SaveAssetType = FromSchema<typeof SAVE_ASSET_TYPE_SCHEMA>;

/** POST /api/intervals and PUT /api/intervals/:id: a definition, and why it is set or changed. */
export const INTERVAL_BODY_SCHEMA = {
  ...INTERVAL_SCHEMA,
  properties: {
    ...INTERVAL_SCHEMA.properties,
    reason: label,
    /** The definition that was read: where another has been put in force since, it is refused (409). */
    over: INTERVAL_SCHEMA,
  },
} as const;
export type IntervalBody = FromSchema<typeof INTERVAL_BODY_SCHEMA>;

/** POST /api/places */
export const ADD_PLACE_SCHEMA = {
  type: "object",
  properties: {
    parent: { oneOf: [uuid, { type: "null" }] },
    level: { enum: ["site", "building", "floor", "room"] },
    code: label,
    name: label,
    zone: label,
  },
  required: ["parent", "level", "code", "name"],
  additionalProperties: false,
} as const;
export type AddPlace = FromSchema<typeof ADD_PLACE_SCHEMA>;
