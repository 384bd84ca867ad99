import type { EntryOf, SealedLeaf } from "@roundbook/schemas";
import { dayOf } from "../append-log.ts";
import { type Batch, overrideKey } from "./batch.ts";
import { whenDone } from "./when-done.ts";

type Said<K extends "interval-overridden" | "override-ended"> = {
  readonly entry: EntryOf<K>;
  readonly leaf: SealedLeaf;
};

/** The latest word stands, in whatever order the entries arrive. */
function put(
  batch: Batch,
  { entry, leaf }: Said<"interval-overridden"> | Said<"override-ended">,
): void {
  const { asset, body } = entry;
  if (asset === null) return;
  const { on, at: instant } = whenDone(entry, leaf);
  const at = instant ?? -1;
  const { interval, reason } = body;
  const known = batch.overrides.get(overrideKey(asset, interval));
  batch.dueAssets.add(asset);
  if (known !== undefined) {
    const later = on - known.on || at - known.at || (entry.id > known.entry ? 1 : -1);
    if (later < 0) return;
  }
  const rule = "rule" in body ? body.rule : null;
  const until = "until" in body && body.until !== undefined ? dayOf(body.until) : null;
  batch.overrides.put({ asset, interval, rule, reason, until, on, at, entry: entry.id });
}

export const applyOverride = (batch: Batch, said: Said<"interval-overridden">): void =>
  put(batch, said);
export const applyOverrideEnd = (batch: Batch, said: Said<"override-ended">): void =>
  put(batch, said);
