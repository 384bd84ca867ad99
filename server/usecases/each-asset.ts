import { setImmediate } from "node:timers/promises";
import { and, asc, eq, gt, type SQL } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import type { DueAsset } from "../store/projections/reckon.ts";
import { assets } from "../store/schema/register.ts";

export const DUE_ASSET = {
  id: assets.id,
  assetType: assets.assetType,
  site: assets.site,
  place: assets.place,
  status: assets.status,
  registeredOn: assets.registeredOn,
  particulars: assets.particulars,
  number: assets.number,
  description: assets.description,
};

export type NamedAsset = DueAsset & { readonly number: string; readonly description: string };

/** Assets that a pass looks at before others get their turn. */
const AT_ONCE = 500;

/** Passes over assets in slices, other requests in between; memory stays flat. */
export async function eachSlice(
  db: Db,
  where: SQL | undefined,
  work: (slice: readonly NamedAsset[]) => Promise<void>,
): Promise<void> {
  for (let last = ""; ; ) {
    const slice = await db
      .select(DUE_ASSET)
      .from(assets)
      .where(and(where, gt(assets.id, last)))
      .orderBy(asc(assets.id))
      .limit(AT_ONCE);
    if (slice.length > 0) await work(slice);
    const final = slice.at(-1);
    if (final === undefined || slice.length < AT_ONCE) return;
    last = final.id;
    await setImmediate();
  }
}

export const ofType = (assetType: string): SQL => eq(assets.assetType, assetType);
