import { type CivilDate, computeWindow, type DoneRecord } from "@roundbook/schemas";
import { and, eq, gt } from "drizzle-orm";
import { among } from "../among.ts";
import type { Db } from "../db.ts";
import { insertRows } from "../insert-rows.ts";
import { results, windows } from "../schema/due.ts";
import { assets, intervals } from "../schema/register.ts";

type IntervalRow = typeof intervals.$inferSelect;
type Due = Pick<
  typeof assets.$inferSelect,
  "id" | "assetType" | "site" | "status" | "registeredOn"
>;

/** All windows are computed in one go, so there is one generation. */
const GENERATION = 1;
const ASSETS_AT_ONCE = 2000;
const COLUMNS = {
  id: assets.id,
  assetType: assets.assetType,
  site: assets.site,
  status: assets.status,
  registeredOn: assets.registeredOn,
};

async function readIntervals(tx: Db): Promise<ReadonlyMap<string, readonly IntervalRow[]>> {
  const byType = new Map<string, IntervalRow[]>();
  for (const row of await tx.select().from(intervals)) {
    const rows = byType.get(row.assetType) ?? [];
    rows.push(row);
    byType.set(row.assetType, rows);
  }
  return byType;
}

async function readDone(
  tx: Db,
  ids: readonly string[],
): Promise<ReadonlyMap<string, DoneRecord[]>> {
  const done = new Map<string, DoneRecord[]>();
  for (const row of await tx.select().from(results).where(among(results.asset, ids))) {
    const key = `${row.asset} ${row.checklist}`;
    const records = done.get(key) ?? [];
    const { entry, on, at, counts, next, broughtForward } = row;
    records.push({ entry, on: on as CivilDate, at, counts, next, broughtForward });
    done.set(key, records);
  }
  return done;
}

async function compute(
  tx: Db,
  due: readonly Due[],
  byType: ReadonlyMap<string, readonly IntervalRow[]>,
): Promise<void> {
  const ids = due.map((asset) => asset.id);
  const done = await readDone(tx, ids);
  const rows: (typeof windows.$inferInsert)[] = [];
  for (const asset of due) {
    // Nothing more is due of what is retired.
    if (asset.status === "retired") continue;
    for (const { id: interval, checklist, definition } of byType.get(asset.assetType) ?? []) {
      const records = done.get(`${asset.id} ${checklist}`) ?? [];
      const registered = asset.registeredOn as CivilDate;
      const window = computeWindow(definition.rule, { done: records, registered });
      rows.push({ asset: asset.id, interval, site: asset.site, ...window, generation: GENERATION });
    }
  }
  await tx.delete(windows).where(among(windows.asset, ids));
  await insertRows(tx, windows, rows);
}

/** Computes the windows of these assets again, from everything known about them. */
export async function computeWindows(tx: Db, all: readonly Due[]): Promise<void> {
  const byType = await readIntervals(tx);
  for (let from = 0; from < all.length; from += ASSETS_AT_ONCE)
    await compute(tx, all.slice(from, from + ASSETS_AT_ONCE), byType);
}

/** The same for every asset of a type, in batches: memory stays flat. */
export async function computeTypeWindows(tx: Db, assetType: string): Promise<void> {
  const byType = await readIntervals(tx);
  for (let last = ""; ; ) {
    const due = await tx
      .select(COLUMNS)
      .from(assets)
      .where(and(eq(assets.assetType, assetType), gt(assets.id, last)))
      .orderBy(assets.id)
      .limit(ASSETS_AT_ONCE);
    await compute(tx, due, byType);
    const final = due.at(-1);
    if (final === undefined || due.length < ASSETS_AT_ONCE) return;
    last = final.id;
  }
}
