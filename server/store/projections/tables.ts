import { createHash } from "node:crypto";
import { getTableName, sql } from "drizzle-orm";
import type { Db } from "../db.ts";
import { calendars, holidays, keepers, teams, times } from "../schema/calendars.ts";
import { counters, defects } from "../schema/defects.ts";
import {
  covered,
  events,
  lastResults,
  overrides,
  recomputes,
  results,
  statuses,
  windows,
} from "../schema/due.ts";
import {
  assets,
  assetTypes,
  assetWords,
  checklistDocs,
  checklists,
  devices,
  intervals,
  people,
  places,
  sources,
} from "../schema/register.ts";
import { tableSql } from "../table-sql.ts";

/** Everything that can be thrown away and derived from the log again. */
export const PROJECTIONS = [
  people,
  devices,
  places,
  assetTypes,
  checklists,
  checklistDocs,
  intervals,
  assets,
  assetWords,
  sources,
  results,
  lastResults,
  windows,
  covered,
  events,
  statuses,
  overrides,
  recomputes,
  calendars,
  holidays,
  teams,
  keepers,
  times,
  defects,
  counters,
] as const;

/** Raised when what is derived changes although the tables do not. */
const RULES = 4;
const statements = PROJECTIONS.flatMap(tableSql);
const VERSION = createHash("sha256")
  .update(`${RULES}\n${statements.join("\n")}`)
  .digest("hex");

/** Whether the tables are those this program derives. */
export async function projectionsAreCurrent(tx: Db): Promise<boolean> {
  await tx.run(
    sql`create table if not exists projection_version (one integer primary key, version text not null) strict`,
  );
  const [row] = await tx.all<{ version: string }>(sql`select version from projection_version`);
  return row?.version === VERSION;
}

/** Drops the projections and makes them anew, empty. */
export async function emptyProjections(tx: Db): Promise<void> {
  for (const table of PROJECTIONS)
    await tx.run(sql.raw(`drop table if exists "${getTableName(table)}"`));
  for (const statement of statements) await tx.run(sql.raw(statement));
  await tx.run(
    sql`insert or replace into projection_version (one, version) values (1, ${VERSION})`,
  );
}
