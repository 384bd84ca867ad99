import type { EntryOf, SealedLeaf } from "@roundbook/schemas";
import { dayOf } from "../append-log.ts";
import { numberKey, numberOrder, wordsOf } from "../words.ts";
import type { Batch } from "./batch.ts";
import { latestDayOf, whenDone } from "./when-done.ts";

type At<K extends "registered" | "brought-forward" | "status-changed" | "particulars-changed"> = {
  readonly entry: EntryOf<K>;
  readonly leaf: SealedLeaf;
};
interface Source {
  readonly content: string;
}

export function applySource(batch: Batch, entry: string, asset: string | null, source?: Source) {
  if (source !== undefined) batch.sources.put({ entry, asset, content: source.content });
}

export function applyRegistered(batch: Batch, { entry, leaf }: At<"registered">): void {
  const { asset, body } = entry;
  if (asset === null || batch.assets.has(asset)) return;
  const words = wordsOf(body.number, body.description, body.serial);
  const { on: registeredOn, at: statusAt } = whenDone(entry, leaf);
  batch.assets.put({
    id: asset,
    number: body.number,
    numberKey: numberKey(body.number),
    numberOrder: numberOrder(body.number),
    assetType: body.assetType,
    description: body.description,
    site: batch.places.get(body.place)?.site ?? body.place,
    place: body.place,
    placeOn: registeredOn,
    placeAt: statusAt ?? -1,
    placeEntry: entry.id,
    particulars: body.particulars,
    particularsOn: registeredOn,
    particularsAt: statusAt ?? -1,
    particularsEntry: entry.id,
    serial: body.serial ?? null,
    photo: body.photo ?? null,
    status: "in-service",
    statusOn: registeredOn,
    statusAt: statusAt ?? -1,
    statusEntry: entry.id,
    order: body.order ?? 0,
    registeredOn,
    search: words.map((word) => ` ${word}`).join(""),
    seq: leaf.seq,
  });
  for (const word of words) batch.assetWords.put({ word, asset });
  applySource(batch, entry.id, asset, body.source);
  batch.dueAssets.add(asset);
}

/** A date carried in from old papers moves a due date and never counts as proof. */
export function applyBroughtForward(batch: Batch, { entry, leaf }: At<"brought-forward">): void {
  const { asset, body } = entry;
  if (asset === null) return;
  batch.results.put({
    entry: entry.id,
    asset,
    checklist: body.checklist,
    hash: null,
    on: Math.min(dayOf(body.doneOn), latestDayOf(leaf)),
    at: null,
    counts: false,
    broughtForward: true,
    next: {},
    readings: {},
    seq: leaf.seq,
  });
  applySource(batch, entry.id, asset, body.source);
  batch.dueAssets.add(asset);
}

/** A status that was given earlier and arrives late does not undo a later one. */
export function applyStatus(batch: Batch, { entry, leaf }: At<"status-changed">): void {
  const row = entry.asset === null ? undefined : batch.assets.get(entry.asset);
  if (row === undefined) return;
  const { on, at: instant } = whenDone(entry, leaf);
  const at = instant ?? -1;
  const { id: asset } = row;
  batch.statuses.put({ entry: entry.id, asset, status: entry.body.status, on, at: instant });
  batch.dueAssets.add(asset);
  const sooner = on - row.statusOn || at - row.statusAt || (entry.id < row.statusEntry ? -1 : 1);
  if (sooner < 0) return;
  const { status } = entry.body;
  batch.assets.put({ ...row, status, statusOn: on, statusAt: at, statusEntry: entry.id });
}

/** The latest word on an asset stands, in whatever order the entries arrive. */
export function applyParticulars(batch: Batch, { entry, leaf }: At<"particulars-changed">): void {
  const row = entry.asset === null ? undefined : batch.assets.get(entry.asset);
  if (row === undefined) return;
  const { on, at: instant } = whenDone(entry, leaf);
  const at = instant ?? -1;
  const { particulars, modified } = entry.body;
  if (modified === true)
    batch.events.put({ entry: entry.id, asset: row.id, kind: "modified", on, at: instant });
  batch.dueAssets.add(row.id);
  const sooner =
    on - row.particularsOn || at - row.particularsAt || (entry.id < row.particularsEntry ? -1 : 1);
  if (sooner < 0) return;
  batch.assets.put({
    ...row,
    particulars,
    particularsOn: on,
    particularsAt: at,
    particularsEntry: entry.id,
  });
}
