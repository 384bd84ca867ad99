import { integer, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** Beside the log: a number that was leased is never leased again, whatever became of it. */
export const numberBlocks = sqliteTable("number_blocks", {
  id: integer("id").primaryKey(),
  device: text("device").notNull(),
  /** Where the device gives them out. */
  site: text("site").notNull(),
  /** What stands before the digits, as numbers are looked up (`numberKey`). */
  prefix: text("prefix").notNull(),
  first: integer("first").notNull(),
  last: integer("last").notNull(),
  leasedAt: integer("leased_at").notNull(),
});
