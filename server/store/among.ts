import { type SQL, sql } from "drizzle-orm";
import type { SQLiteColumn } from "drizzle-orm/sqlite-core";

/** `column in (keys)` with one bound argument, however many keys there are. */
export const among = (column: SQLiteColumn, keys: Iterable<string | number>): SQL =>
  sql`${column} in (select value from json_each(${JSON.stringify([...keys])}))`;
