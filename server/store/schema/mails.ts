import { integer, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** Where a person wants the digest, and on which weekdays, 1 for Monday. */
export const digests = sqliteTable("digests", {
  person: text("person").primaryKey(),
  address: text("address").notNull(),
  weekdays: text("weekdays", { mode: "json" }).$type<readonly number[]>().notNull(),
});

/** One a person and civil day: kept before it is sent, and whatever becomes of it. */
export const mails = sqliteTable("mails", {
  id: text("id").primaryKey(),
  person: text("person").notNull(),
  day: integer("day").notNull(),
  address: text("address").notNull(),
  subject: text("subject").notNull(),
  text: text("text").notNull(),
  madeAt: integer("made_at").notNull(),
  attempts: integer("attempts").notNull(),
  /** When it is tried next; null when it was sent or given up. */
  nextAt: integer("next_at"),
  sentAt: integer("sent_at"),
  lastError: text("last_error"),
});
