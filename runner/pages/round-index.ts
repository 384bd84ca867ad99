import type { ChecklistRow, DefectRow, LastResult, SiteBundle } from "@roundbook/schemas";

interface RoundIndex {
  /** By asset and checklist. */
  readonly last: ReadonlyMap<string, LastResult>;
  /** The first open defect of an asset. */
  readonly defect: ReadonlyMap<string, DefectRow>;
  /** The issue that is filled in today, by checklist. */
  readonly issue: ReadonlyMap<string, ChecklistRow>;
}

const pair = (asset: string, checklist: string): string => `${asset}:${checklist}`;

const firstBy = <T>(rows: readonly T[], key: (row: T) => string): Map<string, T> => {
  const found = new Map<string, T>();
  for (const row of rows) if (!found.has(key(row))) found.set(key(row), row);
  return found;
};

const kept = new WeakMap<SiteBundle, RoundIndex>();

/** What the rows of a round look up, found once for a bundle: a site may have thousands of each. */
const indexOf = (bundle: SiteBundle): RoundIndex => {
  const known = kept.get(bundle);
  if (known) return known;
  const open = bundle.defects.filter(({ step }) => step !== "verified");
  const issued = bundle.checklists.filter(({ status }) => status === "issued");
  const index: RoundIndex = {
    last: firstBy(bundle.lastResults, (row) => pair(row.asset, row.checklist)),
    defect: firstBy(open, (row) => row.asset),
    issue: firstBy(issued, (row) => row.id),
  };
  kept.set(bundle, index);
  return index;
};

/** The newest result of an asset under a checklist. */
export const lastAt = (
  bundle: SiteBundle,
  { asset, checklist }: { readonly asset: string; readonly checklist: string },
): LastResult | undefined => indexOf(bundle).last.get(pair(asset, checklist));

export const defectAt = (bundle: SiteBundle, asset: string): DefectRow | undefined =>
  indexOf(bundle).defect.get(asset);

export const issueAt = (bundle: SiteBundle, checklist: string): ChecklistRow | undefined =>
  indexOf(bundle).issue.get(checklist);
