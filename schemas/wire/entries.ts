import type { FromSchema } from "json-schema-to-ts";
import type { Judgement } from "../judge/judgement.ts";
import { sampleResult } from "../log/bodies.ts";
import { CONTENT_SCHEMA, ENTRY_SCHEMA, type Entry, type SealedLeaf } from "../log/entry.ts";
import { ANSWER_NAME, CIVIL_DATE, SHA256 } from "../shared/patterns.ts";
import type { Problem } from "../shared/problem.ts";

export const ENTRIES_AT_ONCE = 50;

/** POST /api/entries: answered per id, one commit for all, acknowledged after it. */
export const POST_ENTRIES_SCHEMA = {
  type: "object",
  properties: {
    entries: {
      type: "array",
      minItems: 1,
      maxItems: ENTRIES_AT_ONCE,
      items: {
        type: "object",
        properties: {
          entry: ENTRY_SCHEMA,
          hash: { type: "string", pattern: SHA256 },
          /** ECDSA P-256 over the 32 bytes of the hash, IEEE P1363, base64url, by the device's key. */
          signature: { type: "string", minLength: 86, maxLength: 88 },
          contents: { type: "array", items: CONTENT_SCHEMA, maxItems: 200 },
        },
        required: ["entry", "hash", "signature", "contents"],
        additionalProperties: false,
      },
    },
  },
  required: ["entries"],
  additionalProperties: false,
} as const;

/** POST /api/entries/:id/results: what the laboratory found in a sample of that inspection. */
export const RECEIVE_RESULT_SCHEMA = {
  type: "object",
  properties: {
    /** Name of the answer that is the sample. */
    point: { type: "string", pattern: ANSWER_NAME },
    result: sampleResult,
    reportedOn: { type: "string", pattern: CIVIL_DATE },
    note: { type: "string", minLength: 1, maxLength: 1000 },
  },
  required: ["point", "result"],
  additionalProperties: false,
} as const;
export type ReceiveResult = FromSchema<typeof RECEIVE_RESULT_SCHEMA>;
export interface ReceiveResultReply {
  /** Of the entry that holds the result. */
  readonly id: string;
  /** The inspection judged again with it. */
  readonly judgement: Judgement;
}

/** An entry with its hash and signature, as a device keeps it until the server has acknowledged it. */
export interface SignedEntry {
  readonly entry: Entry;
  readonly hash: string;
  readonly signature: string;
  readonly contents: readonly { commit: string; salt: string; text: string }[];
}

/**
 * `already`: same id, same hash, sealed before. `retry-later`: names a checklist or asset the
 * server does not know yet. `refused`: a person must look; the device keeps it.
 */
export type EntryOutcome =
  | {
      readonly id: string;
      readonly outcome: "sealed" | "already";
      readonly seq: number;
      readonly leaf: SealedLeaf;
    }
  | {
      readonly id: string;
      readonly outcome: "retry-later" | "refused";
      readonly problems: readonly Problem[];
    };
export interface PostEntriesReply {
  readonly outcomes: readonly EntryOutcome[];
}
