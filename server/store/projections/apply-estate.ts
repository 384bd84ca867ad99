import type { EntryOf } from "@roundbook/schemas";
import { dayOf, type Sealed } from "../append-log.ts";
import { type Batch, issueKey } from "./batch.ts";

type At<K extends Sealed["entry"]["kind"]> = { readonly entry: EntryOf<K>; readonly seq: number };

export function applyPerson(batch: Batch, { entry, seq }: At<"person-added">): void {
  const { person, role, name } = entry.body;
  batch.people.put({ id: person, role, nameCommit: name.commit, seq });
}

/** The first key stands: another would let a device speak for whoever enrolled before. */
export function applyDevice(batch: Batch, { entry, seq }: At<"device-enrolled">): void {
  const { device, person, key, label = "" } = entry.body;
  if (!batch.devices.has(device)) batch.devices.put({ id: device, person, key, label, seq });
}

/** A place keeps its parent and so its site; whatever lies in a site shares its zone. */
export function applyPlace(batch: Batch, { entry, seq }: At<"place-added">): void {
  const { place, level, code, name, order = 0 } = entry.body;
  const known = batch.places.get(place);
  const parent = known === undefined ? (entry.body.parent ?? null) : known.parent;
  const above = parent === null ? undefined : batch.places.get(parent);
  batch.places.put({
    id: place,
    parent,
    site: known?.site ?? above?.site ?? place,
    level,
    code,
    name,
    zone: above?.zone ?? entry.body.zone ?? known?.zone ?? "UTC",
    order,
    seq,
  });
}

export function applyAssetType(batch: Batch, { entry, seq }: At<"asset-type-issued">): void {
  const { assetType, version, title, particulars, checklists } = entry.body;
  const known = batch.assetTypes.get(assetType);
  if (known !== undefined && known.version > version) return;
  batch.assetTypes.put({ name: assetType, version, title, particulars, checklists, seq });
}

export function applyIssued(batch: Batch, { entry, seq }: At<"checklist-issued">): void {
  const { checklist, document } = entry.body;
  const { id, issue, hash } = checklist;
  if (batch.checklists.has(issueKey(id, issue))) return;
  const title = "title" in document && typeof document.title === "string" ? document.title : "";
  const issuedOn = dayOf(entry.civilDate);
  batch.checklists.put({ id, issue, hash, title, withdrawn: false, issuedOn, seq });
  batch.checklistDocs.put({ hash, document: document as never });
}

export function applyWithdrawn(batch: Batch, { entry }: At<"checklist-withdrawn">): void {
  const { id, issue } = entry.body.checklist;
  const row = batch.checklists.get(issueKey(id, issue));
  if (row !== undefined) batch.checklists.put({ ...row, withdrawn: true });
}

export function applyInterval(batch: Batch, { entry, seq }: At<"interval-set">): void {
  const { interval, definition } = entry.body;
  const { assetType, checklist, title } = definition;
  const before = batch.intervals.get(interval);
  if (before !== undefined) batch.dueTypes.add(before.assetType);
  batch.dueTypes.add(assetType);
  batch.ended.delete(interval);
  batch.intervals.put({ id: interval, assetType, checklist, title, definition, seq });
}

export function applyIntervalEnd(batch: Batch, { entry }: At<"interval-ended">): void {
  const row = batch.intervals.get(entry.body.interval);
  if (row === undefined) return;
  batch.ended.add(row.id);
  batch.dueTypes.add(row.assetType);
}
