import type { DefectRow, Page } from "@roundbook/schemas";
import { and, desc, eq, gt } from "drizzle-orm";
import type { Db } from "../store/db.ts";
import { defects } from "../store/schema/defects.ts";
import { assets } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { decodeCursor, pageOf, pageSize } from "./cursor.ts";
import { civil } from "./read-due.ts";

export const selectDefects = (db: Db) =>
  db
    .select({ defect: defects, number: assets.number, description: assets.description })
    .from(defects)
    .innerJoin(assets, eq(assets.id, defects.asset));
type Stored = Awaited<ReturnType<typeof selectDefects>>[number];

export const defectRow = ({ defect, number, description }: Stored): DefectRow => ({
  id: defect.id,
  number: defect.number,
  asset: defect.asset,
  assetNumber: number,
  assetDescription: description,
  site: defect.site,
  point: defect.point,
  title: defect.title,
  grade: defect.grade,
  by: defect.by === null ? null : civil(defect.by),
  raisedOn: civil(defect.raisedOn),
  raisedBy: defect.raisedBy,
  step: defect.step,
  passedSince: defect.passedSince === null ? null : civil(defect.passedSince),
});

/** By their number, the oldest first. */
export async function readDefects(
  ctx: Context,
  asked: {
    readonly site?: string;
    readonly open?: boolean;
    readonly cursor?: string;
    readonly limit?: number;
  },
): Promise<Page<DefectRow>> {
  const size = pageSize(asked.limit);
  const after = asked.cursor && Number(decodeCursor(asked.cursor, ["number"])[0]);
  const stored = await selectDefects(ctx.store.db)
    .where(
      and(
        asked.site === undefined ? undefined : eq(defects.site, asked.site),
        asked.open === undefined ? undefined : eq(defects.open, asked.open),
        after ? gt(defects.number, after) : undefined,
      ),
    )
    .orderBy(defects.number)
    .limit(size + 1);
  return pageOf(stored, size, ({ defect }) => [defect.number], defectRow);
}

/** Every defect an asset ever had, open ones first. */
export async function readAssetDefects(db: Db, asset: string): Promise<DefectRow[]> {
  const stored = await selectDefects(db)
    .where(eq(defects.asset, asset))
    .orderBy(desc(defects.open), desc(defects.number));
  return stored.map(defectRow);
}
