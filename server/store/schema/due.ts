import type { Explanation, LastResult, OverallVerdict } from "@roundbook/schemas";
import { index, integer, primaryKey, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { canonicalJson } from "./canonical-json.ts";

/** Projections: what every inspection and date carried in says about due dates. Days since 1970. */
export const results = sqliteTable(
  "results",
  {
    entry: text("entry").primaryKey(),
    asset: text("asset").notNull(),
    checklist: text("checklist").notNull(),
    on: integer("done_on").notNull(),
    /** Milliseconds UTC; null when only the date is known. */
    at: integer("at"),
    counts: integer("counts", { mode: "boolean" }).notNull(),
    broughtForward: integer("brought_forward", { mode: "boolean" }).notNull(),
    next: canonicalJson<Readonly<Record<string, string | null>>>("next").notNull(),
    seq: integer("seq").notNull(),
  },
  (table) => [index("results_by_asset").on(table.asset, table.checklist)],
);

/** The latest inspection per asset and checklist. */
export const lastResults = sqliteTable(
  "last_results",
  {
    asset: text("asset").notNull(),
    checklist: text("checklist").notNull(),
    entry: text("entry").notNull(),
    on: integer("done_on").notNull(),
    at: integer("at").notNull(),
    overall: text("overall").$type<OverallVerdict>(),
    readings: canonicalJson<LastResult["readings"]>("readings").notNull(),
  },
  (table) => [primaryKey({ columns: [table.asset, table.checklist] })],
);

export const windows = sqliteTable(
  "windows",
  {
    asset: text("asset").notNull(),
    interval: text("interval").notNull(),
    site: text("site").notNull(),
    earliest: integer("earliest").notNull(),
    due: integer("due").notNull(),
    latest: integer("latest").notNull(),
    /** The entry the window was computed from; null when never done. */
    from: text("from_entry"),
    lastDone: integer("last_done"),
    why: canonicalJson<Explanation>("why").notNull(),
    /** Computations of all windows at once are numbered; readers see one generation. */
    generation: integer("generation").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.asset, table.interval] }),
    index("windows_by_due").on(table.due, table.asset, table.interval),
    index("windows_by_site").on(table.site, table.due, table.asset, table.interval),
  ],
);
