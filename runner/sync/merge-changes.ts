import type { SiteBundle, SiteChanges } from "@roundbook/schemas";

type ByAsset = { readonly asset: string };

/** The rows of assets that did not change, and all rows of those that did. */
const merged = <Row extends ByAsset>(
  kept: readonly Row[],
  came: readonly Row[],
  changed: ReadonlySet<string>,
): Row[] => [...kept.filter(({ asset }) => !changed.has(asset)), ...came];

const byKey = <Row>(rows: readonly Row[], keyOf: (row: Row) => string): Row[] => [
  ...new Map(rows.map((row) => [keyOf(row), row])).values(),
];

const compare = (a: string | number, b: string | number): number => (a < b ? -1 : a > b ? 1 : 0);

/** A site as it is now, from what was kept and what changed since: what reading it whole would give. */
export const mergeChanges = (bundle: SiteBundle, changes: SiteChanges): SiteBundle => {
  const changed = new Set([...changes.gone, ...changes.assets.map(({ id }) => id)]);
  const due = merged(bundle.due, changes.due, changed).sort(
    (a, b) => compare(a.due, b.due) || compare(a.asset, b.asset) || compare(a.interval, b.interval),
  );
  return {
    ...bundle,
    assets: [...bundle.assets.filter(({ id }) => !changed.has(id)), ...changes.assets],
    due,
    overrides: merged(bundle.overrides, changes.overrides, changed),
    lastResults: merged(bundle.lastResults, changes.lastResults, changed),
    defects: merged(bundle.defects, changes.defects, changed).sort((a, b) => a.number - b.number),
    // A type that is new to the site brings its checklists and intervals; no entry took any away.
    assetTypes: byKey([...bundle.assetTypes, ...changes.assetTypes], (row) => row.assetType),
    intervals: byKey([...bundle.intervals, ...changes.intervals], (row) => row.id),
    checklists: byKey([...bundle.checklists, ...changes.checklists], (row) => row.hash),
    cursor: changes.cursor,
    stamp: changes.stamp,
    today: changes.today,
  };
};
