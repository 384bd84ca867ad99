import { among } from "../../store/among.ts";
import { assets } from "../../store/schema/register.ts";
import { numberKey } from "../../store/words.ts";
import type { Desk, KnownAsset } from "./desk.ts";

const KEPT = "asset:";

/**
 * Assets by number as it is looked up (`numberKey`): those of the register, and those that earlier rows of this import add, which a
 * trial has nowhere else. Devices lease numbers, so that one number may name several.
 */
export async function knownAssets(
  { ctx, scratch }: Desk,
  keys: readonly string[],
): Promise<Map<string, KnownAsset[]>> {
  const found = new Map<string, KnownAsset[]>();
  const add = (asset: KnownAsset) => {
    const key = numberKey(asset.number);
    const same = found.get(key) ?? [];
    if (!same.some(({ id }) => id === asset.id)) found.set(key, [...same, asset]);
  };
  const rows = await ctx.store.db
    .select({
      id: assets.id,
      number: assets.number,
      assetType: assets.assetType,
      description: assets.description,
      place: assets.place,
      serial: assets.serial,
      particulars: assets.particulars,
    })
    .from(assets)
    .where(among(assets.numberKey, keys));
  rows.forEach(add);
  const kept = await scratch.get(keys.map((key) => KEPT + key));
  for (const text of kept.values()) add(JSON.parse(text) as KnownAsset);
  return found;
}

export const keepAssets = (scratch: Desk["scratch"], added: readonly KnownAsset[]): Promise<void> =>
  scratch.put(
    new Map(added.map((asset) => [KEPT + numberKey(asset.number), JSON.stringify(asset)])),
  );
