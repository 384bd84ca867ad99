import type { EntryKind } from "@roundbook/schemas";
import { index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** What is asked of the log most often, small; its documents stand in `entry_docs`. */
export const entries = sqliteTable(
  "entries",
  {
    /** From 1, without gaps: the leaf index of the Merkle tree is one less. */
    seq: integer("seq").primaryKey(),
    id: text("id").notNull().unique(),
    kind: text("kind").$type<EntryKind>().notNull(),
    asset: text("asset"),
    author: text("author").notNull(),
    device: text("device").notNull(),
    /** Civil date at the site, days since 1970-01-01. */
    civilDate: integer("civil_date").notNull(),
    /** Milliseconds UTC; -1 when only the date is known, so that keys stay comparable. */
    at: integer("at").notNull(),
    receivedAt: integer("received_at").notNull(),
    hash: text("hash").notNull(),
    /** Comma-separated, empty for most. */
    flags: text("flags").notNull(),
    /** Person whose session delivered it; null for entries the server made. */
    deliveredBy: text("delivered_by"),
  },
  (table) => [index("entries_by_asset").on(table.asset, table.civilDate, table.at, table.seq)],
);

export const entryDocs = sqliteTable("entry_docs", {
  seq: integer("seq").primaryKey(),
  /** RFC 8785 canonical form, exactly what the hash covers. */
  entry: text("entry").notNull(),
  /** Canonical form of the leaf, exactly what the Merkle leaf covers. */
  leaf: text("leaf").notNull(),
  /** By the device's key over the hash; null for entries the server made. */
  signature: text("signature"),
});

/** One row: how far the log reaches. */
export const logState = sqliteTable("log_state", {
  one: integer("one").primaryKey(),
  size: integer("size").notNull(),
  /** JSON list of [level, hash in hex] from left to right. */
  frontier: text("frontier").notNull(),
});

/** Personal text that entries only commit to; it may be erased, the log stands. */
export const contents = sqliteTable("contents", {
  commit: text("commit_hash").primaryKey(),
  salt: text("salt").notNull(),
  text: text("text").notNull(),
});
