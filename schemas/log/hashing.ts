import { utf8 } from "./bytes.ts";
import { canonicalize, type KnownTexts } from "./canonical.ts";
import type { Entry, SealedLeaf } from "./entry.ts";

/** SHA-256 as the server has it. */
export type SyncDigest = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array;
/** SHA-256 as a browser has it, too. */
export type Digest = (bytes: Uint8Array<ArrayBuffer>) => Uint8Array | Promise<Uint8Array>;

/** The canonical form of an entry: its members and nothing else, whatever rides along. */
export function entryText(entry: Entry, known?: KnownTexts): string {
  const { id, kind, asset, author, device, happenedAt, civilDate, body } = entry;
  return canonicalize({ id, kind, asset, author, device, happenedAt, civilDate, body }, known);
}

/** What an entry's hash is taken over. */
export const entryBytes = (entry: Entry): Uint8Array<ArrayBuffer> => utf8(entryText(entry));

/** What a salted commitment to personal text is taken over; `salt` in hex. */
export const commitBytes = (salt: string, text: string): Uint8Array<ArrayBuffer> =>
  utf8(`${salt}\n${text}`);

/** The canonical form of a leaf. */
export function leafText(leaf: SealedLeaf, known?: KnownTexts): string {
  const { seq, hash, receivedAt, judgement, engine, flags } = leaf;
  return canonicalize({ seq, hash, receivedAt, judgement, engine, flags }, known);
}

/** What a Merkle leaf is taken over, before the leaf prefix of RFC 9162. */
export const leafBytes = (leaf: SealedLeaf): Uint8Array<ArrayBuffer> => utf8(leafText(leaf));
