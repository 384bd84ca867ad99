import type { Holidays, SiteCalendar } from "@roundbook/schemas";
import { integer, primaryKey, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { canonicalJson } from "./canonical-json.ts";

/** Projections: when places are closed, and who does their rounds. */
export const calendars = sqliteTable("calendars", {
  site: text("site").primaryKey(),
  calendar: canonicalJson<SiteCalendar>("calendar").notNull(),
  seq: integer("seq").notNull(),
});

export const holidays = sqliteTable(
  "holidays",
  {
    region: text("region").notNull(),
    year: integer("year").notNull(),
    holidays: canonicalJson<Holidays["holidays"]>("holidays").notNull(),
    seq: integer("seq").notNull(),
  },
  (table) => [primaryKey({ columns: [table.region, table.year] })],
);

export const teams = sqliteTable("teams", {
  id: text("id").primaryKey(),
  name: text("name").notNull(),
  members: canonicalJson<readonly string[]>("members").notNull(),
  seq: integer("seq").notNull(),
});

/** Person or team that does the rounds of a place and of what lies in it; null: nobody. */
export const keepers = sqliteTable("keepers", {
  place: text("place").primaryKey(),
  keeper: text("keeper"),
  seq: integer("seq").notNull(),
});

export const times = sqliteTable("times", {
  person: text("person").primaryKey(),
  /** Minutes a week for rounds. */
  minutes: integer("minutes").notNull(),
  seq: integer("seq").notNull(),
});
