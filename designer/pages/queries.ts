import type {
  AssetTypeRow,
  BlockRow,
  ChecklistRow,
  DraftRow,
  IntervalRow,
  PersonRow,
  PlaceRow,
} from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { getJson } from "./client.ts";

const list = <Row>(key: string, path: string) => ({
  queryKey: [key],
  queryFn: async () => (await getJson<{ rows: Row[] }>(path)).rows,
});

export const useChecklists = () => useQuery(list<ChecklistRow>("checklists", "/api/checklists"));
export const useDrafts = () => useQuery(list<DraftRow>("drafts", "/api/drafts"));
export const useBlocks = () => useQuery(list<BlockRow>("blocks", "/api/blocks"));
export const useAssetTypes = () => useQuery(list<AssetTypeRow>("asset-types", "/api/asset-types"));
export const useIntervals = () => useQuery(list<IntervalRow>("intervals", "/api/intervals"));
export const usePlaces = () => useQuery(list<PlaceRow>("places", "/api/places"));
export const usePeople = () => useQuery(list<PersonRow>("people", "/api/people"));

/** Every issue of one checklist, newest first. */
export const useIssues = (checklist: string | undefined) =>
  useQuery({
    queryKey: ["checklists", "of", checklist],
    queryFn: async () =>
      (await getJson<{ rows: ChecklistRow[] }>(`/api/checklists?of=${checklist}`)).rows,
    enabled: checklist !== undefined,
  });
