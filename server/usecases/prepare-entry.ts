import { hash } from "node:crypto";
import {
  canonicalize,
  ENGINE,
  type Entry,
  entryText,
  type Judgement,
  type KnownTexts,
} from "@roundbook/schemas";
import type { Prepared } from "../store/append-log.ts";

/** The canonical form of an entry and its SHA-256 in hex. */
export function sealable(entry: Entry, texts?: KnownTexts): { canonical: string; hash: string } {
  const canonical = entryText(entry, texts);
  return { canonical, hash: hash("sha256", canonical) };
}

type Rest = Pick<Prepared, "flags" | "signature" | "deliveredBy" | "receivedAt">;

export function prepareEntry(
  entry: Entry,
  judgement: Judgement | null,
  rest: Rest,
  sealing?: ReturnType<typeof sealable>,
): Prepared {
  // An entry the server made holds the very judgement its leaf holds: it is written once.
  const texts = judgement ? new Map([[judgement, canonicalize(judgement)]]) : undefined;
  return {
    entry,
    texts,
    ...(sealing ?? sealable(entry, texts)),
    judgement,
    engine: judgement?.engine ?? ENGINE,
    ...rest,
  };
}
