import { type Entry, type EntryFlag, type Problem, problem } from "@roundbook/schemas";
import { and, eq } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { defects } from "../store/schema/defects.ts";
import { entries } from "../store/schema/log.ts";
import { assets, assetTypes, checklists, places } from "../store/schema/register.ts";
import { numberKey } from "../store/words.ts";
import { takenNumbers } from "./taken-numbers.ts";

export interface References {
  /** Named and not known here yet: the entry may be sent again later. */
  readonly unknown: readonly Problem[];
  /** Contradicts what is known: a person must look. */
  readonly wrong: readonly Problem[];
  readonly flags: readonly EntryFlag[];
}
type Found = { unknown?: Problem; wrong?: Problem; flag?: EntryFlag };

const unknown = (pointer: string, code: string): Found => ({ unknown: problem(pointer, code) });

async function findAsset(tx: Db, entry: Entry): Promise<Found> {
  const [row] = await tx
    .select({ status: assets.status })
    .from(assets)
    .where(eq(assets.id, entry.asset ?? ""));
  if (row === undefined) return unknown("/entry/asset", "unknown-asset");
  const retired = row.status === "retired" && entry.kind !== "status-changed";
  return retired ? { flag: "asset-retired" } : {};
}

async function findChecklist(
  tx: Db,
  { id, issue, hash }: { id: string; issue: number; hash: string },
): Promise<Found> {
  const [row] = await tx
    .select({ withdrawn: checklists.withdrawn })
    .from(checklists)
    .where(and(eq(checklists.id, id), eq(checklists.issue, issue), eq(checklists.hash, hash)));
  if (row === undefined) return unknown("/entry/body/checklist", "unknown-checklist");
  return row.withdrawn ? { flag: "checklist-withdrawn" } : {};
}

async function findRegistration(tx: Db, entry: Entry & { kind: "registered" }): Promise<Found[]> {
  const { number, place, assetType } = entry.body;
  const known = tx
    .select({ id: assets.id })
    .from(assets)
    .where(eq(assets.id, entry.asset ?? ""));
  const type = tx
    .select({ name: assetTypes.name })
    .from(assetTypes)
    .where(eq(assetTypes.name, assetType));
  const found: Found[] = [];
  if ((await known).length > 0)
    found.push({ wrong: problem("/entry/asset", "asset-registered-before") });
  found.push(await findPlace(tx, place));
  if ((await type).length === 0) found.push(unknown("/entry/body/assetType", "unknown-asset-type"));
  if ((await takenNumbers(tx, [number])).has(numberKey(number)))
    found.push({ flag: "duplicate-number" });
  return found;
}

async function findPlace(tx: Db, place: string): Promise<Found> {
  const rows = await tx.select({ id: places.id }).from(places).where(eq(places.id, place));
  return rows.length === 0 ? unknown("/entry/body/place", "unknown-place") : {};
}

async function findDefect(tx: Db, entry: Entry & { kind: "defect-step" }): Promise<Found> {
  const [row] = await tx
    .select({ asset: defects.asset })
    .from(defects)
    .where(eq(defects.id, entry.body.defect));
  if (row === undefined) return unknown("/entry/body/defect", "unknown-defect");
  const elsewhere = row.asset !== entry.asset;
  return elsewhere ? { wrong: problem("/entry/body/defect", "defect-of-other-asset") } : {};
}

async function findCorrected(tx: Db, entry: Entry & { kind: "correction" }): Promise<Found> {
  const [row] = await tx
    .select({ asset: entries.asset })
    .from(entries)
    .where(eq(entries.id, entry.body.of));
  if (row === undefined) return unknown("/entry/body/of", "unknown-entry");
  const elsewhere = row.asset !== entry.asset;
  return elsewhere ? { wrong: problem("/entry/body/of", "entry-of-other-asset") } : {};
}

async function findAll(tx: Db, entry: Entry): Promise<Found[]> {
  if (entry.kind === "registered") return findRegistration(tx, entry);
  const found = [await findAsset(tx, entry)];
  if (entry.kind === "inspection" || entry.kind === "not-completed")
    found.push(await findChecklist(tx, entry.body.checklist));
  if (entry.kind === "moved") found.push(await findPlace(tx, entry.body.place));
  if (entry.kind === "defect-step") found.push(await findDefect(tx, entry));
  if (entry.kind === "correction") found.push(await findCorrected(tx, entry));
  return found;
}

/** Whether what an entry names is known here. */
export async function checkReferences(tx: Db, entry: Entry): Promise<References> {
  const found = await findAll(tx, entry);
  return {
    unknown: found.flatMap((one) => one.unknown ?? []),
    wrong: found.flatMap((one) => one.wrong ?? []),
    flags: found.flatMap((one) => one.flag ?? []),
  };
}
