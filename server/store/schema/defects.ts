import type { DefectRow } from "@roundbook/schemas";
import { index, integer, sqliteTable, text } from "drizzle-orm/sqlite-core";

/** Projection: one open defect at most per asset, checklist and point. Days since 1970. */
export const defects = sqliteTable(
  "defects",
  {
    /** Entry id of the inspection that raised it, a colon, and the point. */
    id: text("id").primaryKey(),
    /** What people call it by: counted in the order of the log. */
    number: integer("number").notNull(),
    asset: text("asset").notNull(),
    site: text("site").notNull(),
    checklist: text("checklist").notNull(),
    point: text("point").notNull(),
    title: text("title").notNull(),
    grade: text("grade").$type<DefectRow["grade"]>().notNull(),
    /** Day to have it put right by. */
    by: integer("by_day"),
    raisedOn: integer("raised_on").notNull(),
    raisedBy: text("raised_by").notNull(),
    step: text("step").$type<DefectRow["step"]>().notNull(),
    passedSince: integer("passed_since"),
    open: integer("open", { mode: "boolean" }).notNull(),
    /** The latest judgement of its point that has been taken in: (day, milliseconds). */
    seenOn: integer("seen_on").notNull(),
    seenAt: integer("seen_at").notNull(),
  },
  (table) => [
    index("defects_by_asset").on(table.asset, table.open),
    index("defects_by_site").on(table.site, table.open, table.number),
    index("defects_by_number").on(table.open, table.number),
  ],
);

export const counters = sqliteTable("counters", {
  name: text("name").primaryKey(),
  value: integer("value").notNull(),
});
