import type { HistoryEntry, Page } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { getJson } from "../sync/client.ts";

/** Nobody looks further back on a screen, and no asset is checked that often. */
const MOST_PAGES = 10;

/** The whole history of an asset, newest first, up to 2,000 entries: for plots and what was missed. */
export const usePast = (asset: string) =>
  useQuery({
    queryKey: ["pages", "past", asset],
    retry: false,
    networkMode: "always",
    queryFn: async () => {
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
      return rows;
    },
  });
