import type {
  AssetStatus,
  Checklist,
  IntervalDefinition,
  ParticularDefinitions,
  Particulars,
  PlaceRow,
  Role,
} from "@roundbook/schemas";
import { index, integer, primaryKey, real, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { canonicalJson } from "./canonical-json.ts";

/** Projections of the log: dropped and derived again, never migrated. `seq` is the entry behind a row. */
export const people = sqliteTable("people", {
  id: text("id").primaryKey(),
  role: text("role").$type<Role>().notNull(),
  /** Commitment to the name, which stands in `contents` until it is erased. */
  nameCommit: text("name_commit").notNull(),
  seq: integer("seq").notNull(),
});

export const devices = sqliteTable("devices", {
  id: text("id").primaryKey(),
  person: text("person").notNull(),
  /** ECDSA P-256 public key, uncompressed point, base64url. */
  key: text("key").notNull(),
  label: text("label").notNull(),
  seq: integer("seq").notNull(),
});

export const places = sqliteTable(
  "places",
  {
    id: text("id").primaryKey(),
    parent: text("parent"),
    site: text("site").notNull(),
    level: text("level").$type<PlaceRow["level"]>().notNull(),
    code: text("code").notNull(),
    name: text("name").notNull(),
    zone: text("zone").notNull(),
    order: integer("walk_order").notNull(),
    seq: integer("seq").notNull(),
  },
  (table) => [index("places_by_site").on(table.site, table.order)],
);

export const assetTypes = sqliteTable("asset_types", {
  name: text("name").primaryKey(),
  version: integer("version").notNull(),
  title: text("title").notNull(),
  particulars: canonicalJson<ParticularDefinitions>("particulars").notNull(),
  checklists: canonicalJson<readonly string[]>("checklists").notNull(),
  seq: integer("seq").notNull(),
});

export const checklists = sqliteTable(
  "checklists",
  {
    id: text("id").notNull(),
    issue: integer("issue").notNull(),
    hash: text("hash").notNull(),
    title: text("title").notNull(),
    /** That one check by it is expected to take. */
    minutes: real("minutes").notNull(),
    withdrawn: integer("withdrawn", { mode: "boolean" }).notNull(),
    issuedOn: integer("issued_on").notNull(),
    seq: integer("seq").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.id, table.issue] }),
    index("checklists_by_hash").on(table.hash),
  ],
);

export const checklistDocs = sqliteTable("checklist_docs", {
  hash: text("hash").primaryKey(),
  document: canonicalJson<Checklist>("document").notNull(),
});

export interface PendingInterval {
  readonly definition: IntervalDefinition;
  readonly generation: number;
}

export const intervals = sqliteTable(
  "intervals",
  {
    id: text("id").primaryKey(),
    assetType: text("asset_type").notNull(),
    checklist: text("checklist").notNull(),
    title: text("title").notNull(),
    definition: canonicalJson<IntervalDefinition>("definition").notNull(),
    /** Of the windows that readers see, numbered by the entry that asked for them; 0: none yet. */
    generation: integer("generation").notNull(),
    /** What its windows are being worked out for. */
    pending: canonicalJson<PendingInterval>("pending"),
    seq: integer("seq").notNull(),
  },
  (table) => [index("intervals_by_type").on(table.assetType)],
);

export const assets = sqliteTable(
  "assets",
  {
    id: text("id").primaryKey(),
    number: text("number").notNull(),
    /** In lower case: what a typed number is looked up by. Not unique: a clash is shown to be mended. */
    numberKey: text("number_key").notNull(),
    /** Digits padded, so that 2 comes before 10. */
    numberOrder: text("number_order").notNull(),
    assetType: text("asset_type").notNull(),
    description: text("description").notNull(),
    site: text("site").notNull(),
    place: text("place").notNull(),
    /** Civil date, instant and entry that put it there: a late entry does not undo a later one. */
    placeOn: integer("place_on").notNull(),
    placeAt: integer("place_at").notNull(),
    placeEntry: text("place_entry").notNull(),
    particulars: canonicalJson<Particulars>("particulars").notNull(),
    /** Civil date, instant and entry that gave them: a late entry does not undo a later one. */
    particularsOn: integer("particulars_on").notNull(),
    particularsAt: integer("particulars_at").notNull(),
    particularsEntry: text("particulars_entry").notNull(),
    serial: text("serial"),
    photo: text("photo"),
    status: text("status").$type<AssetStatus>().notNull(),
    /** Civil date, instant and entry that gave the status: a late entry does not undo a later one. */
    statusOn: integer("status_on").notNull(),
    statusAt: integer("status_at").notNull(),
    statusEntry: text("status_entry").notNull(),
    order: integer("walk_order").notNull(),
    registeredOn: integer("registered_on").notNull(),
    /** Its words in lower case, a space before each. */
    search: text("search").notNull(),
    seq: integer("seq").notNull(),
  },
  (table) => [
    index("assets_by_number").on(table.numberKey, table.seq),
    index("assets_by_order").on(table.numberOrder, table.id),
    index("assets_by_site").on(table.site, table.numberOrder, table.id),
    index("assets_by_type").on(table.assetType, table.id),
  ],
);

/** Words of an asset: a prefix of one is found without reading the register. */
export const assetWords = sqliteTable(
  "asset_words",
  { word: text("word").notNull(), asset: text("asset").notNull() },
  (table) => [primaryKey({ columns: [table.word, table.asset] })],
);

/** Rows of imported files by the entry that holds them. */
export const sources = sqliteTable("sources", {
  entry: text("entry").primaryKey(),
  asset: text("asset"),
  content: text("content").notNull(),
});
