import type { AssetRow, DefectRow, DueRow, OverrideRow, Page } from "@roundbook/schemas";
import { and, asc, desc, eq, sql } from "drizzle-orm";
import { among } from "../store/among.ts";
import type { Db } from "../store/db.ts";
import { windows } from "../store/schema/due.ts";
import { assets } from "../store/schema/register.ts";
import { numberKey } from "../store/words.ts";
import type { Context } from "./context.ts";
import { decodeCursor, pageOf, pageSize } from "./cursor.ts";
import { findWords } from "./find-words.ts";
import { readAssetDefects } from "./read-defects.ts";
import { civil, dayAsked, dueRow, selectDue } from "./read-due.ts";
import { readOverrides } from "./read-overrides.ts";
import { readPaths } from "./read-paths.ts";

type Stored = typeof assets.$inferSelect;

/** Rows as the wire has them, with the names of their places. */
export async function assetRows(db: Db, stored: readonly Stored[]): Promise<AssetRow[]> {
  const paths = await readPaths(
    db,
    stored.map((row) => row.place),
  );
  return stored.map((row) => ({
    id: row.id,
    number: row.number,
    assetType: row.assetType,
    description: row.description,
    site: row.site,
    place: row.place,
    path: paths.get(row.place) ?? [],
    particulars: row.particulars,
    serial: row.serial,
    ...(row.photo === null ? {} : { photo: row.photo }),
    status: row.status,
    order: row.order,
    registeredOn: civil(row.registeredOn),
  }));
}

/** The register by number, 2 before 10; `q` finds words and numbers by their beginning. */
export async function readAssets(
  ctx: Context,
  asked: {
    readonly site?: string;
    readonly q?: string;
    readonly cursor?: string;
    readonly limit?: number;
  },
): Promise<Page<AssetRow>> {
  const { db } = ctx.store;
  const size = pageSize(asked.limit);
  const words = await findWords(db, asked.q);
  const order = words.few ? sql`+${assets.numberOrder}` : sql`${assets.numberOrder}`;
  const after = asked.cursor && decodeCursor(asked.cursor, ["string", "string"]);
  const stored = await db
    .select()
    .from(assets)
    .where(
      and(
        asked.site === undefined ? undefined : eq(assets.site, asked.site),
        words.where,
        after ? sql`(${order}, ${assets.id}) > (${after[0]}, ${after[1]})` : undefined,
      ),
    )
    .orderBy(order, assets.id)
    .limit(size + 1);
  const page = pageOf(
    stored,
    size,
    (row) => [row.numberOrder, row.id],
    (row) => row,
  );
  return { rows: await assetRows(db, page.rows), next: page.next };
}

const NUMBER = "number:";

/** By id, or by number as "number:4033": of several with one number, one in use, the newest. */
async function findAsset(db: Db, asked: string): Promise<Stored | undefined> {
  const where = asked.startsWith(NUMBER)
    ? eq(assets.numberKey, numberKey(asked.slice(NUMBER.length)))
    : eq(assets.id, asked);
  const rows = await db.select().from(assets).where(where).orderBy(desc(assets.seq)).limit(20);
  return rows.find((row) => row.status !== "retired") ?? rows[0];
}

export interface AssetPage {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly defects: readonly DefectRow[];
  readonly overrides: readonly OverrideRow[];
}

/** Null when there is none. `on` as for the due list. */
export async function readAsset(
  ctx: Context,
  asked: string,
  on?: string,
): Promise<AssetPage | null> {
  const { db } = ctx.store;
  const stored = await findAsset(db, asked);
  if (stored === undefined) return null;
  const [asset] = await assetRows(db, [stored]);
  if (asset === undefined) return null;
  const day = await dayAsked(ctx, on, stored.site);
  const due = await selectDue(db)
    .where(eq(windows.asset, stored.id))
    .orderBy(asc(windows.due), asc(windows.interval));
  return {
    asset,
    due: due.map((row) => dueRow(row, day)),
    defects: await readAssetDefects(db, stored.id),
    overrides: await readOverrides(ctx, [stored.id]),
  };
}

/** Ids of the assets that bear each number, the newest first; a number nobody bears is left out. */
export async function findAssetsByNumber(
  ctx: Context,
  numbers: readonly string[],
): Promise<Map<string, string[]>> {
  const rows = await ctx.store.db
    .select({ id: assets.id, key: assets.numberKey })
    .from(assets)
    .where(among(assets.numberKey, new Set(numbers.map(numberKey))))
    .orderBy(desc(assets.seq));
  const byKey = new Map<string, string[]>();
  for (const { id, key } of rows) byKey.set(key, [...(byKey.get(key) ?? []), id]);
  const found = new Map<string, string[]>();
  for (const number of numbers) {
    const ids = byKey.get(numberKey(number));
    if (ids !== undefined) found.set(number, ids);
  }
  return found;
}
