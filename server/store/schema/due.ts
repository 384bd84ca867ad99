import type {
  AssetStatus,
  DueEvent,
  Explanation,
  IntervalRule,
  LastResult,
  OverallVerdict,
} from "@roundbook/schemas";
import { isNotNull, isNull, sql } from "drizzle-orm";
import {
  index,
  integer,
  primaryKey,
  type SQLiteColumn,
  sqliteTable,
  text,
  uniqueIndex,
} from "drizzle-orm/sqlite-core";
import { canonicalJson } from "./canonical-json.ts";

/** Projections: what every inspection and date carried in says about due dates. Days since 1970. */
export const results = sqliteTable(
  "results",
  {
    entry: text("entry").primaryKey(),
    asset: text("asset").notNull(),
    checklist: text("checklist").notNull(),
    /** Of the issue it was done by; null for a date from old papers. */
    hash: text("hash"),
    on: integer("done_on").notNull(),
    /** Milliseconds UTC; null when only the date is known. */
    at: integer("at"),
    counts: integer("counts", { mode: "boolean" }).notNull(),
    broughtForward: integer("brought_forward", { mode: "boolean" }).notNull(),
    next: canonicalJson<Readonly<Record<string, string | null>>>("next").notNull(),
    /** As entered, by point: what meters showed. */
    readings: canonicalJson<LastResult["readings"]>("readings").notNull(),
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

type Column = SQLiteColumn;

/**
 * One scope of the due list in each order that it is read in: by due date, by the day that windows
 * open, and of the few that were never done or have a state, by those alone. Whatever is asked for
 * of a scope that has none of it then costs nothing.
 */
const inOrder = (
  table: Readonly<Record<"due" | "earliest" | "lastDone" | "state", Column>>,
  scope: string,
  columns: readonly Column[],
) => {
  const on = (name: string, ...last: [Column, ...Column[]]) => {
    const [first, ...rest] = [...columns, ...last] as [Column, ...Column[]];
    return index(`windows_${name}_${scope}`).on(first, ...rest);
  };
  return [
    on("due", table.due),
    on("opening", table.earliest),
    on("never_done", table.due).where(isNull(table.lastDone)),
    on("state", table.state, table.due).where(isNotNull(table.state)),
  ];
};

export const windows = sqliteTable(
  "windows",
  {
    /** Kept while the window is: with the due date it is the place in the due list. */
    id: integer("id").primaryKey(),
    asset: text("asset").notNull(),
    interval: text("interval").notNull(),
    /** Readers see the generation of the interval; another is being worked out or left over. */
    generation: integer("generation").notNull(),
    site: text("site").notNull(),
    place: text("place").notNull(),
    assetType: text("asset_type").notNull(),
    /** Person or team that does the rounds of the place. */
    keeper: text("keeper"),
    earliest: integer("earliest").notNull(),
    due: integer("due").notNull(),
    latest: integer("latest").notNull(),
    /** The entry the window was computed from; null when never done. */
    from: text("from_entry"),
    lastDone: integer("last_done"),
    /** Null where the dates alone tell the status. */
    state: text("state").$type<"blocked" | "excused" | "undecided">(),
    /** Since when it is blocked or excused, and the day that its place reopens. */
    stateFrom: integer("state_from"),
    reopens: integer("reopens"),
    why: canonicalJson<Explanation>("why").notNull(),
  },
  (table) => [
    uniqueIndex("windows_by_asset").on(table.asset, table.interval, table.generation),
    index("windows_by_interval").on(table.interval, table.generation),
    /** How long the longest late window is: nothing due before that can still be in one. */
    index("windows_by_margin").on(sql`${table.latest} - ${table.due}`),
    /** How long the longest early window is: nothing due after that can already be in one. */
    index("windows_by_lead").on(sql`${table.due} - ${table.earliest}`),
    ...Object.entries({
      all: [],
      site: [table.site],
      place: [table.place],
      keeper: [table.keeper],
      type: [table.assetType],
    }).flatMap(([scope, columns]) => inOrder(table, scope, columns)),
  ],
);

/** What happened to an asset and may ask for a check. */
export const events = sqliteTable(
  "events",
  {
    entry: text("entry").primaryKey(),
    asset: text("asset").notNull(),
    kind: text("kind").$type<Exclude<DueEvent["kind"], "returned">>().notNull(),
    on: integer("happened_on").notNull(),
    at: integer("at"),
  },
  (table) => [index("events_by_asset").on(table.asset)],
);

/** Every status an asset was given: that it came back into service is read off their order. */
export const statuses = sqliteTable(
  "statuses",
  {
    entry: text("entry").primaryKey(),
    asset: text("asset").notNull(),
    status: text("status").$type<AssetStatus>().notNull(),
    on: integer("happened_on").notNull(),
    at: integer("at"),
  },
  (table) => [index("statuses_by_asset").on(table.asset)],
);

/** The last word on the rule of one asset by one interval; without a rule it follows the interval's. */
export const overrides = sqliteTable(
  "overrides",
  {
    asset: text("asset").notNull(),
    interval: text("interval").notNull(),
    rule: canonicalJson<IntervalRule>("rule"),
    reason: text("reason").notNull(),
    until: integer("until"),
    on: integer("said_on").notNull(),
    at: integer("at").notNull(),
    entry: text("entry").notNull(),
  },
  (table) => [primaryKey({ columns: [table.asset, table.interval] })],
);

/** Inspections of a longer check that stood for a shorter one; of the generation of the windows. */
export const covered = sqliteTable(
  "covered",
  {
    asset: text("asset").notNull(),
    entry: text("entry").notNull(),
    /** Of the shorter check. */
    interval: text("interval").notNull(),
    generation: integer("generation").notNull(),
    on: integer("done_on").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.asset, table.entry, table.interval, table.generation] }),
    index("covered_by_entry").on(table.entry),
  ],
);

/** What the background works at, each piece resumed where it stopped. */
export const recomputes = sqliteTable("recomputes", {
  /** Sequence number of the entry that asks for it, and so the generation of its windows. */
  id: integer("id").primaryKey(),
  /** A new generation of intervals; the windows of sites in place; rows that nobody sees any more. */
  kind: text("kind").$type<"intervals" | "sites" | "sweep">().notNull(),
  /** Intervals, or sites. */
  subjects: canonicalJson<readonly string[]>("subjects").notNull(),
  /** The last asset that is done. */
  last: text("last").notNull(),
  done: integer("done").notNull(),
  of: integer("total").notNull(),
});
