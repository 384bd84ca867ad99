import { sql } from "drizzle-orm";
import type { Db } from "../db.ts";
import { LOG } from "./0001-log.ts";
import { ESTATE } from "./0002-estate.ts";
import { BLOCKS } from "./0003-blocks.ts";
import { INTERVAL_DRAFTS } from "./0004-interval-drafts.ts";
import { FEEDS } from "./0005-feeds.ts";
import { MAILS } from "./0006-mails.ts";
import { NUMBER_BLOCKS } from "./0007-number-blocks.ts";

export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly statements: readonly string[];
}

/** In order; one that has been shipped is never changed. */
const MIGRATIONS: readonly Migration[] = [
  LOG,
  ESTATE,
  BLOCKS,
  INTERVAL_DRAFTS,
  FEEDS,
  MAILS,
  NUMBER_BLOCKS,
];

/** Brings the tables of record up to date, in the caller's transaction. @throws when a newer program made them. */
export async function migrate(tx: Db): Promise<void> {
  await tx.run(
    sql`create table if not exists migrations (number integer primary key, name text not null) strict`,
  );
  const [done] = await tx.all<{ last: number | null }>(
    sql`select max(number) as last from migrations`,
  );
  const last = done?.last ?? 0;
  if (last > MIGRATIONS.length)
    throw new Error(`the database has migration ${last}; this program knows ${MIGRATIONS.length}`);
  for (const { number, name, statements } of MIGRATIONS) {
    if (number <= last) continue;
    for (const statement of statements) await tx.run(sql.raw(statement));
    await tx.run(sql`insert into migrations (number, name) values (${number}, ${name})`);
  }
}
