import type { ChecklistRow, HistoryEntry, SiteBundle } from "@roundbook/schemas";
import { queryOptions, useQueries, useQuery } from "@tanstack/react-query";
import { useMemo } from "react";
import type { DeviceDatabase } from "../offline/database.ts";
import { getJson } from "../sync/client.ts";
import { useDevice } from "./device.tsx";
import { BUNDLES_KEY, useBundles } from "./use-bundle.ts";

const hashOf = ({ entry: { body } }: HistoryEntry): string | undefined =>
  "checklist" in body && typeof body.checklist === "object" ? body.checklist.hash : undefined;

/** An issue never changes: kept here, else fetched, and then kept. */
const issueQuery = (database: DeviceDatabase, hash: string) =>
  queryOptions({
    queryKey: ["issue", hash],
    staleTime: Number.POSITIVE_INFINITY,
    networkMode: "always",
    queryFn: async (): Promise<ChecklistRow> => {
      const kept = await database.get("checklists", hash);
      if (kept) return kept;
      const row = await getJson<ChecklistRow>(`/api/checklists/${hash}`);
      await database.put("checklists", row);
      return row;
    },
  });

const namesIn = ({ site, places, intervals }: SiteBundle) => [
  ...[site, ...places].map((place) => [place.id, place.name] as const),
  ...intervals.map(({ id, definition }) => [id, definition.title] as const),
];

/**
 * Titles of checklist issues by hash, of kept intervals and places by id: those this device keeps, and those its rows name. A device keeps
 * the issues of the sites walked with it; an old entry, or another site's, names others.
 */
export const useTitles = (rows: readonly HistoryEntry[]): ReadonlyMap<string, string> => {
  const { database } = useDevice();
  const { data: kept } = useQuery({
    queryKey: [...BUNDLES_KEY, "checklists"],
    queryFn: () => database.getAll("checklists"),
    networkMode: "always",
  });
  const titles = useMemo(
    () => kept && new Map(kept.map((row) => [row.hash, row.document.title])),
    [kept],
  );
  const named = [...new Set(rows.map(hashOf))].filter((hash) => hash !== undefined);
  const missing = titles ? named.filter((hash) => !titles.has(hash)) : [];
  const others = useQueries({ queries: missing.map((hash) => issueQuery(database, hash)) });
  const found = others.flatMap(({ data }) => data ?? []);
  const bundles = useBundles().data ?? [];
  return new Map([
    ...bundles.flatMap(({ bundle }) => namesIn(bundle)),
    ...(titles ?? []),
    ...found.map((row) => [row.hash, row.document.title] as const),
  ]);
};

/** One issue by its hash. */
export const useIssue = (hash: string | undefined) => {
  const { database } = useDevice();
  return useQuery({ ...issueQuery(database, hash ?? ""), enabled: hash !== undefined });
};
