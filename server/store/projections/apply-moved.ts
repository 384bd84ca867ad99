import type { EntryOf, SealedLeaf } from "@roundbook/schemas";
import type { Batch } from "./batch.ts";
import { whenDone } from "./when-done.ts";

/**
 * Where an asset was last seen stands, in whatever order the entries arrive. What is due of it and
 * what is wrong with it go with it to its new site.
 */
export function applyMoved(
  batch: Batch,
  { entry, leaf }: { readonly entry: EntryOf<"moved">; readonly leaf: SealedLeaf },
): void {
  const row = entry.asset === null ? undefined : batch.assets.get(entry.asset);
  if (row === undefined) return;
  const { on, at: instant } = whenDone(entry, leaf);
  const at = instant ?? -1;
  const later = on - row.placeOn || at - row.placeAt || (entry.id < row.placeEntry ? -1 : 1);
  if (later < 0) return;
  const { place } = entry.body;
  const site = batch.places.get(place)?.site ?? place;
  batch.assets.put({ ...row, site, place, placeOn: on, placeAt: at, placeEntry: entry.id });
  batch.dueAssets.add(row.id);
  for (const defect of [...batch.defects.values()])
    if (defect.asset === row.id) batch.defects.put({ ...defect, site });
}
