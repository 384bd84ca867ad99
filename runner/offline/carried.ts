import type { DeviceDatabase } from "./database.ts";

/** What the last asset that was added at a site leaves for the next. */
export interface Carried {
  readonly place: string;
  readonly assetType: string;
  readonly description: string;
}

const keyOf = (site: string) => `carried:${site}`;

export const loadCarried = async (
  database: DeviceDatabase,
  site: string,
): Promise<Carried | null> =>
  ((await database.get("settings", keyOf(site))) as Carried | undefined) ?? null;

export const keepCarried = async (
  database: DeviceDatabase,
  site: string,
  carried: Carried,
): Promise<void> => {
  await database.put("settings", carried, keyOf(site));
};
