import { utf8 } from "./bytes.ts";
import { canonicalize } from "./canonical.ts";
import type { Entry, SealedLeaf } from "./entry.ts";

/** SHA-256 as the server has it. */
export type SyncDigest = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array;
/** SHA-256 as a browser has it, too. */
export type Digest = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array | Promise<Uint8Array>;

/** What an entry's hash is taken over: its members and nothing else, whatever rides along. */
export function entryBytes(entry: Entry): Uint8Array<ArrayBuffer> {
  const { id, kind, asset, author, device, happenedAt, civilDate, body } = entry;
  return utf8(canonicalize({ id, kind, asset, author, device, happenedAt, civilDate, body }));
}

/** What a salted commitment to personal text is taken over; `salt` in hex. */
export const commitBytes = (salt: string, text: string): Uint8Array<ArrayBuffer> =>
  utf8(`${salt}\n${text}`);

/** What a Merkle leaf is taken over, before the leaf prefix of RFC 9162. */
export function leafBytes(leaf: SealedLeaf): Uint8Array<ArrayBuffer> {
  const { seq, hash, receivedAt, judgement, engine, flags } = leaf;
  return utf8(canonicalize({ seq, hash, receivedAt, judgement, engine, flags }));
}
