import type { ResultSet } from "@libsql/client";
import type { BaseSQLiteDatabase } from "drizzle-orm/sqlite-core";

/** A database or a transaction on it: queries are written once for both. */
export type Db = BaseSQLiteDatabase<"async", ResultSet>;
