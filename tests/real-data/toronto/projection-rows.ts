import { getTableName, sql } from "drizzle-orm";
import { PROJECTIONS } from "../../../server/store/projections/tables.ts";
import type { Context } from "../../../server/usecases/context.ts";

/** Every row of every projection, as text, by table. */
export async function projectionRows(ctx: Context): Promise<Record<string, string[]>> {
  const tables: Record<string, string[]> = {};
  for (const table of PROJECTIONS) {
    const name = getTableName(table);
    const rows = await ctx.store.db.all(sql.raw(`select * from "${name}"`));
    // A window's id is its place in the table, and nothing that follows from the log.
    const plain = rows.map((row) => (name === "windows" ? { ...(row as object), id: 0 } : row));
    tables[name] = plain.map((row) => JSON.stringify(row)).sort();
  }
  return tables;
}
