import type { ChecklistRow } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useMemo } from "react";
import { getJson } from "../sync/client.ts";
import { useDevice } from "./device.tsx";
import { BUNDLES_KEY } from "./use-bundle.ts";

/** Titles of the checklist issues this device keeps, by hash. */
export const useTitles = (): ReadonlyMap<string, string> => {
  const { database } = useDevice();
  const kept = useQuery({
    queryKey: [...BUNDLES_KEY, "checklists"],
    queryFn: () => database.getAll("checklists"),
    networkMode: "always",
  });
  return useMemo(
    () => new Map((kept.data ?? []).map((row) => [row.hash, row.document.title])),
    [kept.data],
  );
};

/** One issue by its hash: kept here, else fetched, and then kept: an issue never changes. */
export const useIssue = (hash: string | undefined) => {
  const { database } = useDevice();
  return useQuery<ChecklistRow>({
    queryKey: ["issue", hash],
    enabled: hash !== undefined,
    staleTime: Number.POSITIVE_INFINITY,
    networkMode: "always",
    queryFn: async () => {
      const kept = await database.get("checklists", hash ?? "");
      if (kept) return kept;
      const row = await getJson<ChecklistRow>(`/api/checklists/${hash}`);
      await database.put("checklists", row);
      return row;
    },
  });
};
