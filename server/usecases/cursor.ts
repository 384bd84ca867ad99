import { Refusal } from "./refusal.ts";

export type CursorKey = readonly (string | number)[];

/** Where a page ended, as text that means nothing to whoever carries it. */
export const encodeCursor = (key: CursorKey): string =>
  Buffer.from(JSON.stringify(key)).toString("base64url");

/** Reads a cursor whose key has members of these types. @throws Refusal for any other text. */
export function decodeCursor(cursor: string, types: readonly ("string" | "number")[]): CursorKey {
  try {
    const key: unknown = JSON.parse(Buffer.from(cursor, "base64url").toString());
    if (
      Array.isArray(key) &&
      key.length === types.length &&
      key.every((member, position) => typeof member === types[position])
    )
      return key;
  } catch {
    // Falls through: what is no JSON is no cursor of ours.
  }
  throw new Refusal("malformed", "bad-cursor");
}

const LARGEST_PAGE = 200;
const USUAL_PAGE = 50;

export const pageSize = (limit = USUAL_PAGE): number =>
  Math.max(1, Math.min(LARGEST_PAGE, Math.floor(limit)));

/** Cuts the one row too many that tells whether there is a next page. */
export function pageOf<Stored, Row>(
  stored: readonly Stored[],
  size: number,
  keyOf: (row: Stored) => CursorKey,
  rowOf: (row: Stored) => Row,
): { rows: Row[]; next: string | null } {
  const last = stored.length > size ? stored[size - 1] : undefined;
  return {
    rows: stored.slice(0, size).map(rowOf),
    next: last === undefined ? null : encodeCursor(keyOf(last)),
  };
}
