import { createHash } from "node:crypto";
import { ENGINE, type Entry, entryBytes, type Judgement } from "@roundbook/schemas";
import type { Prepared } from "../store/append-log.ts";

/** The canonical form of an entry and its SHA-256 in hex. */
export function sealable(entry: Entry): { canonical: string; hash: string } {
  const bytes = entryBytes(entry);
  return {
    canonical: Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString(),
    hash: createHash("sha256").update(bytes).digest("hex"),
  };
}

type Rest = Pick<Prepared, "flags" | "signature" | "deliveredBy" | "receivedAt">;

export const prepareEntry = (
  entry: Entry,
  judgement: Judgement | null,
  rest: Rest,
  sealing = sealable(entry),
): Prepared => ({
  entry,
  ...sealing,
  judgement,
  engine: judgement?.engine ?? ENGINE,
  ...rest,
});
