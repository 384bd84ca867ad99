import type { EntryOf, SealedLeaf } from "@roundbook/schemas";
import { dayOf, type Sealed } from "../append-log.ts";
import {
  applyBroughtForward,
  applyParticulars,
  applyRegistered,
  applyStatus,
} from "./apply-asset.ts";
import { applyOverride, applyOverrideEnd } from "./apply-due.ts";
import {
  applyAssetType,
  applyCalendar,
  applyDevice,
  applyHolidays,
  applyInterval,
  applyIntervalEnd,
  applyIssued,
  applyKeeper,
  applyPerson,
  applyPlace,
  applyTeam,
  applyTime,
  applyWithdrawn,
} from "./apply-estate.ts";
import { applyInspection, applyResult } from "./apply-inspection.ts";
import { applyMoved } from "./apply-moved.ts";
import { type Batch, defectKey } from "./batch.ts";
import { whenDone } from "./when-done.ts";

/**
 * A step that arrives after an inspection of a later time found the fault again says nothing of it
 * any more: the defect stays open. What is verified stays verified, whatever arrives late.
 */
function applyStep(batch: Batch, entry: EntryOf<"defect-step">, leaf: SealedLeaf): void {
  const defect = batch.defects.get(entry.body.defect);
  if (entry.body.step === "repaired" && entry.asset !== null) {
    const { on, at } = whenDone(entry, leaf);
    batch.events.put({ entry: entry.id, asset: entry.asset, kind: "repaired", on, at });
    batch.dueAssets.add(entry.asset);
  }
  if (defect === undefined || !defect.open) return;
  const { step, until } = entry.body;
  const { on, at } = whenDone(entry, leaf);
  const sooner = on - defect.seenOn || (at ?? -1) - defect.seenAt;
  if (step === "verified" && defect.passedSince === null && sooner < 0) return;
  const by = step === "deferred" && until !== undefined ? dayOf(until) : defect.by;
  const open = step !== "verified";
  batch.defects.put({ ...defect, step, by, open });
  if (!open) batch.openDefects.delete(defectKey(defect.asset, defect.checklist, defect.point));
}

/** What one entry changes, in memory: entries are applied in the order of the log. */
export function apply(batch: Batch, { entry, leaf }: Sealed): void {
  const { seq } = leaf;
  switch (entry.kind) {
    case "estate-named":
      batch.estateName = entry.body.name;
      break;
    case "person-added":
      applyPerson(batch, { entry, seq });
      break;
    case "device-enrolled":
      applyDevice(batch, { entry, seq });
      break;
    case "place-added":
      applyPlace(batch, { entry, seq });
      break;
    case "asset-type-issued":
      applyAssetType(batch, { entry, seq });
      break;
    case "checklist-issued":
      applyIssued(batch, { entry, seq });
      break;
    case "checklist-withdrawn":
      applyWithdrawn(batch, { entry, seq });
      break;
    case "interval-set":
      applyInterval(batch, { entry, seq });
      break;
    case "interval-ended":
      applyIntervalEnd(batch, { entry, seq });
      break;
    case "registered":
      applyRegistered(batch, { entry, leaf });
      break;
    case "brought-forward":
      applyBroughtForward(batch, { entry, leaf });
      break;
    case "status-changed":
      applyStatus(batch, { entry, leaf });
      break;
    case "inspection":
      applyInspection(batch, entry, leaf);
      break;
    case "result-received":
      applyResult(batch, entry, leaf);
      break;
    case "defect-step":
      applyStep(batch, entry, leaf);
      break;
    case "interval-overridden":
      applyOverride(batch, { entry, leaf });
      break;
    case "override-ended":
      applyOverrideEnd(batch, { entry, leaf });
      break;
    case "calendar-set":
      applyCalendar(batch, { entry, seq });
      break;
    case "holidays-set":
      applyHolidays(batch, { entry, seq });
      break;
    case "team-set":
      applyTeam(batch, { entry, seq });
      break;
    case "keeper-set":
      applyKeeper(batch, { entry, seq });
      break;
    case "time-set":
      applyTime(batch, { entry, seq });
      break;
    case "moved":
      applyMoved(batch, { entry, leaf });
      break;
    case "particulars-changed":
      applyParticulars(batch, { entry, leaf });
      break;
    case "not-completed":
    case "correction":
      // History alone shows them.
      break;
    default:
      throw new Error(`no projection reads ${entry satisfies never}`);
  }
}
