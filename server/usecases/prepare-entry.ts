import { createHash } from "node:crypto";
import { ENGINE, type Entry, entryText, type Judgement } from "@roundbook/schemas";
import type { Prepared } from "../store/append-log.ts";

/** The canonical form of an entry and its SHA-256 in hex. */
export function sealable(entry: Entry): { canonical: string; hash: string } {
  const canonical = entryText(entry);
  return { canonical, hash: createHash("sha256").update(canonical).digest("hex") };
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
