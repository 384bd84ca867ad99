import { index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** One row: the estate this database belongs to. */
export const estate = sqliteTable("estate", {
  one: integer("one").primaryKey(),
  id: text("id").notNull(),
  name: text("name").notNull(),
  /** Device id of the entries that the server makes. */
  serverDevice: text("server_device").notNull(),
});

export const accounts = sqliteTable("accounts", {
  signIn: text("sign_in").primaryKey(),
  passwordHash: text("password_hash").notNull(),
  person: text("person").notNull().unique(),
  /** Milliseconds UTC. */
  changedAt: integer("changed_at").notNull(),
});

export const sessions = sqliteTable(
  "sessions",
  {
    /** SHA-256 of the cookie's value, in hex: a copy of the table signs nobody in. */
    tokenHash: text("token_hash").primaryKey(),
    person: text("person").notNull(),
    createdAt: integer("created_at").notNull(),
    expiresAt: integer("expires_at").notNull(),
  },
  (table) => [index("sessions_by_expiry").on(table.expiresAt)],
);

/** Unissued checklists: mutable, outside the log, untouched by a rebuild. */
export const drafts = sqliteTable("drafts", {
  checklist: text("checklist").primaryKey(),
  revision: integer("revision").notNull(),
  /** JSON text as the designer sent it. */
  document: text("document").notNull(),
  changedAt: integer("changed_at").notNull(),
  changedBy: text("changed_by").notNull(),
});

/** Intervals that are not in force yet: mutable, outside the log, untouched by a rebuild. */
export const intervalDrafts = sqliteTable("interval_drafts", {
  id: text("id").primaryKey(),
  revision: integer("revision").notNull(),
  /** JSON text as the designer sent it. */
  definition: text("definition").notNull(),
  changedAt: integer("changed_at").notNull(),
  changedBy: text("changed_by").notNull(),
});

/** Blocks that drafts take in: mutable, outside the log, untouched by a rebuild. */
export const blocks = sqliteTable("blocks", {
  name: text("name").primaryKey(),
  revision: integer("revision").notNull(),
  /** JSON text of a well-formed block. */
  document: text("document").notNull(),
  changedAt: integer("changed_at").notNull(),
  changedBy: text("changed_by").notNull(),
});

/** What the blob store holds. */
export const evidence = sqliteTable("evidence", {
  sha256: text("sha256").primaryKey(),
  mime: text("mime").notNull(),
  /** Bytes. */
  size: integer("size").notNull(),
  receivedAt: integer("received_at").notNull(),
});

/** Secret calendar addresses of sites and people; the secret itself is kept nowhere. */
export const feeds = sqliteTable("feeds", {
  id: text("id").primaryKey(),
  tokenHash: text("token_hash").notNull().unique(),
  kind: text("kind").$type<"site" | "person">().notNull(),
  subject: text("subject").notNull(),
  createdAt: integer("created_at").notNull(),
  createdBy: text("created_by").notNull(),
  revokedAt: integer("revoked_at"),
});
