import type {
  AssetTypeRow,
  BlockRow,
  CalendarRow,
  ChecklistRow,
  DraftRow,
  IntervalDraftRow,
  IntervalRow,
  PersonRow,
  PlaceRow,
  TeamRow,
} from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { getJson } from "./client.ts";

const POLL_MS = 1000;

const list = <Row>(key: string, path: string) => ({
  queryKey: [key],
  queryFn: async () => (await getJson<{ rows: Row[] }>(path)).rows,
});

export const useChecklists = () => useQuery(list<ChecklistRow>("checklists", "/api/checklists"));
export const useDrafts = () => useQuery(list<DraftRow>("drafts", "/api/drafts"));
export const useBlocks = () => useQuery(list<BlockRow>("blocks", "/api/blocks"));
export const useAssetTypes = () => useQuery(list<AssetTypeRow>("asset-types", "/api/asset-types"));
export const useIntervals = () =>
  useQuery({
    ...list<IntervalRow>("intervals", "/api/intervals"),
    // While dates are worked out it is asked again how far they are.
    refetchInterval: ({ state }) =>
      state.data?.some(({ progress }) => progress) ? POLL_MS : false,
  });
export const useIntervalDrafts = () =>
  useQuery(list<IntervalDraftRow>("interval-drafts", "/api/interval-drafts"));
export const useTeams = () => useQuery(list<TeamRow>("teams", "/api/teams"));
export const useCalendars = () => useQuery(list<CalendarRow>("calendars", "/api/calendars"));
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
