import type { FromSchema } from "json-schema-to-ts";
import type { Judgement } from "../judge/judgement.ts";
import { CIVIL_DATE, INSTANT, SHA256, UUID } from "../shared/patterns.ts";
import { type BODY_SCHEMAS, ENTRY_KINDS, type EntryKind } from "./bodies.ts";

const head = {
  id: { type: "string", pattern: UUID },
  asset: { oneOf: [{ type: "string", pattern: UUID }, { type: "null" }] },
  author: { type: "string", pattern: UUID },
  device: { type: "string", pattern: UUID },
  /** The device's clock, UTC; null when only the date is known, as in old papers. */
  happenedAt: { oneOf: [{ type: "string", pattern: INSTANT }, { type: "null" }] },
  /** The site's civil date: the device instant corrected by the last known server offset. */
  civilDate: { type: "string", pattern: CIVIL_DATE },
} as const;

/** The head of every entry; its body is checked by the schema of its kind (`BODY_SCHEMAS`). */
export const ENTRY_SCHEMA = {
  type: "object",
  properties: { ...head, kind: { enum: ENTRY_KINDS }, body: { type: "object" } },
  required: ["id", "kind", "asset", "author", "device", "happenedAt", "civilDate", "body"],
  additionalProperties: false,
} as const;

interface EntryHead {
  readonly id: string;
  readonly asset: string | null;
  readonly author: string;
  readonly device: string;
  readonly happenedAt: string | null;
  readonly civilDate: string;
}

export type BodyOf<K extends EntryKind> = FromSchema<(typeof BODY_SCHEMAS)[K]>;
/** What the SHA-256 over the RFC 8785 canonical form covers: exactly these members. */
export type EntryOf<K extends EntryKind> = EntryHead & {
  readonly kind: K;
  readonly body: BodyOf<K>;
};
export type Entry = { [K in EntryKind]: EntryOf<K> }[EntryKind];

/** Personal text kept beside the log: `commit` = SHA-256 of salt (hex) + "\n" + text, in UTF-8. */
export const CONTENT_SCHEMA = {
  type: "object",
  properties: {
    commit: { type: "string", pattern: SHA256 },
    salt: { type: "string", pattern: "^[0-9a-f]{32}$" },
    text: { type: "string", maxLength: 4000 },
  },
  required: ["commit", "salt", "text"],
  additionalProperties: false,
} as const;
export type Content = FromSchema<typeof CONTENT_SCHEMA>;

/** Things sealed all the same, and shown to be mended. */
export type EntryFlag =
  | "judgement-differs"
  | "clock-differs"
  | "duplicate-number"
  | "asset-retired"
  | "authority-lapsed"
  | "checklist-withdrawn";

/** What the server adds when it seals: hashed with the entry's own hash into the Merkle leaf. */
export interface SealedLeaf {
  readonly seq: number;
  /** SHA-256 of the entry's canonical form, as its device computed it. */
  readonly hash: string;
  readonly receivedAt: string;
  /**
   * The server's own judgement of an inspection, and with a result received of its inspection judged
   * again; else null.
   */
  readonly judgement: Judgement | null;
  readonly engine: string;
  readonly flags: readonly EntryFlag[];
}
