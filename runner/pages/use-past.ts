import type { HistoryEntry, Page } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import type { DeviceDatabase } from "../offline/database.ts";
import { pastOfAsset } from "../offline/past.ts";
import { getJson, Unreachable } from "../sync/client.ts";
import { useDevice } from "./device.tsx";

/** Nobody looks further back on a screen, and no asset is checked that often. */
const MOST_PAGES = 10;

export interface Past {
  readonly rows: readonly HistoryEntry[];
  /** As this device keeps it; what was sealed elsewhere since is not in it. */
  readonly kept: boolean;
  /** The server has older ones. */
  readonly more: boolean;
}

async function readPast(asset: string): Promise<Past> {
  const rows: HistoryEntry[] = [];
  let cursor: string | null = null;
  for (let at = 0; at < MOST_PAGES; at += 1) {
    const asked: string = cursor === null ? "" : `&cursor=${encodeURIComponent(cursor)}`;
    const page: Page<HistoryEntry> = await getJson(
      `/api/assets/${asset}/history?limit=200${asked}`,
    );
    rows.push(...page.rows);
    cursor = page.next;
    if (cursor === null) break;
  }
  return { rows, kept: false, more: cursor !== null };
}

async function pastOrKept(database: DeviceDatabase, asset: string): Promise<Past> {
  try {
    return await readPast(asset);
  } catch (error) {
    if (!(error instanceof Unreachable)) throw error;
    const rows = await pastOfAsset(database, asset);
    if (rows.length === 0) throw error;
    return { rows, kept: true, more: false };
  }
}

/**
 * The whole history of an asset, newest first, up to 2,000 entries; without a network, what this
 * device keeps of it.
 */
export const usePast = (asset: string) => {
  const { database } = useDevice();
  return useQuery({
    queryKey: ["pages", "past", asset],
    retry: false,
    networkMode: "always",
    queryFn: () => pastOrKept(database, asset),
  });
};
