import type { Sealed } from "../append-log.ts";
import type { Db } from "../db.ts";
import { apply } from "./apply.ts";
import { Batch } from "./batch.ts";
import { computeWindows } from "./compute-windows.ts";
import { workOutBatch } from "./work-out.ts";

/**
 * Takes sealed entries into the projections, in the transaction that sealed them. Windows follow
 * from assets, results and intervals alone, so they are computed once, at the end of the batch:
 * how a log is cut into batches makes no difference.
 */
export async function project(tx: Db, sealed: readonly Sealed[]): Promise<void> {
  const batch = await take(tx, sealed);
  // Entries of an asset that was never registered leave no row, and nothing is due of it.
  const assets = [...batch.dueAssets].flatMap((id) => batch.assets.get(id) ?? []);
  if (assets.length > 0) await computeWindows(tx, assets);
  await workOutBatch(tx, batch);
}

/** The same without due windows, for whoever computes them all afterwards. */
export async function take(tx: Db, sealed: readonly Sealed[]): Promise<Batch> {
  const batch = new Batch();
  await batch.load(tx, sealed);
  for (const one of sealed) apply(batch, one);
  await batch.flush(tx);
  return batch;
}
