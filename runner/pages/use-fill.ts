import type { Answers, AssetRow, ChecklistRow, LastResult, SiteBundle } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import type { LastReading } from "../form/index.ts";
import type { Draft } from "../offline/database.ts";
import { loadDraft } from "../offline/drafts.ts";
import { withWaiting } from "../offline/overlay.ts";
import { useDevice } from "./device.tsx";

export interface ToFill {
  readonly bundle: SiteBundle;
  readonly asset: AssetRow;
  readonly issue: ChecklistRow;
  readonly draft: Draft | undefined;
  readonly previous: Readonly<Record<string, LastReading>>;
  /** Answers of the last complete inspection, where the checklist compares with them. */
  readonly previousAnswers: Answers | undefined;
  /** A sentence by point about a defect already open there. */
  readonly openDefects: Readonly<Record<string, number>>;
}

const previousOf = (last: LastResult | undefined): ToFill["previous"] =>
  Object.fromEntries(
    Object.entries(last?.readings ?? {}).map(([point, reading]) => [
      point,
      { ...reading, on: last?.on },
    ]),
  );

/** All that filling in needs, from this device alone. Null when it does not keep it. */
export const useToFill = (assetId: string, checklistHash: string) => {
  const { database } = useDevice();
  return useQuery<ToFill | null>({
    queryKey: ["to-fill", assetId, checklistHash],
    // An inspection under way is not changed by what arrives meanwhile.
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
    refetchOnMount: "always",
    queryFn: async () => {
      const outbox = await database.getAll("outbox");
      const kept = await database.getAll("bundles");
      const bundles = await Promise.all(kept.map((row) => withWaiting(row.bundle, outbox)));
      const issue = await database.get("checklists", checklistHash);
      const bundle = bundles.find((one) => one.assets.some(({ id }) => id === assetId));
      const asset = bundle?.assets.find(({ id }) => id === assetId);
      if (!bundle || !asset || !issue) return null;
      const last = bundle.lastResults.find(
        (one) => one.asset === assetId && one.checklist === issue.id,
      );
      const defects = bundle.defects.filter(
        (one) => one.asset === assetId && one.step !== "verified",
      );
      return {
        bundle,
        asset,
        issue,
        draft: await loadDraft(database, assetId, checklistHash),
        previous: previousOf(last),
        previousAnswers: last?.previous,
        openDefects: Object.fromEntries(defects.map((one) => [one.point, one.number])),
      };
    },
  });
};
