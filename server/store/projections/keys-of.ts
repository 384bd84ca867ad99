import type { Sealed } from "../append-log.ts";

/** The rows that a batch of entries will touch, by projection. */
export function keysOf(sealed: readonly Sealed[]) {
  const sets = {
    people: new Set<string>(),
    devices: new Set<string>(),
    places: new Set<string>(),
    types: new Set<string>(),
    /** Whether any interval may be touched. */
    intervals: false,
    /** Assets that were given rules of their own. */
    overridden: new Set<string>(),
    checklists: new Set<string>(),
    documents: new Set<string>(),
    assets: new Set<string>(),
    inspected: new Set<string>(),
    defects: new Set<string>(),
    /** Assets all of whose defects go with them. */
    moved: new Set<string>(),
    /** Inspections whose samples have got results, and their assets. */
    resulted: new Set<string>(),
    resultedAssets: new Set<string>(),
  };
  for (const { entry, leaf } of sealed) {
    if (entry.asset !== null) sets.assets.add(entry.asset);
    switch (entry.kind) {
      case "person-added":
        sets.people.add(entry.body.person);
        break;
      case "device-enrolled":
        sets.devices.add(entry.body.device);
        break;
      case "place-added":
        sets.places.add(entry.body.place);
        if (typeof entry.body.parent === "string") sets.places.add(entry.body.parent);
        break;
      case "asset-type-issued":
        sets.types.add(entry.body.assetType);
        break;
      case "checklist-issued":
      case "checklist-withdrawn":
        sets.checklists.add(entry.body.checklist.id);
        sets.intervals = true;
        break;
      case "interval-set":
      case "interval-ended":
        sets.intervals = true;
        break;
      case "interval-overridden":
      case "override-ended":
        if (entry.asset !== null) sets.overridden.add(entry.asset);
        break;
      case "keeper-set":
        sets.places.add(entry.body.place);
        break;
      case "registered":
        sets.places.add(entry.body.place);
        break;
      case "moved":
        sets.places.add(entry.body.place);
        if (entry.asset !== null) sets.moved.add(entry.asset);
        break;
      case "inspection":
        if (entry.asset !== null) sets.inspected.add(entry.asset);
        if (leaf.judgement?.overall === "fail") sets.documents.add(entry.body.checklist.hash);
        break;
      case "result-received":
        if (entry.asset !== null) {
          sets.inspected.add(entry.asset);
          sets.resultedAssets.add(entry.asset);
        }
        sets.resulted.add(entry.body.of);
        break;
      case "defect-step":
        sets.defects.add(entry.body.defect);
        break;
      case "calendar-set":
      case "holidays-set":
      case "team-set":
      case "time-set":
      case "particulars-changed":
      case "estate-named":
      case "brought-forward":
      case "status-changed":
      case "not-completed":
      case "correction":
        break;
      default:
        throw new Error(`no projection reads ${entry satisfies never}`);
    }
  }
  return sets;
}
