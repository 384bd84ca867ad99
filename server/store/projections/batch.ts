import type { EntryOf, SealedLeaf } from "@roundbook/schemas";
import { and, asc, eq, or, type SQL, sql } from "drizzle-orm";
import { among } from "../among.ts";
import type { Sealed } from "../append-log.ts";
import type { Db } from "../db.ts";
import { calendars, holidays, keepers, teams, times } from "../schema/calendars.ts";
import { counters, defects } from "../schema/defects.ts";
import { events, lastResults, overrides, results, statuses } from "../schema/due.ts";
import { estate } from "../schema/estate.ts";
import { entries, entryDocs } from "../schema/log.ts";
import {
  assets,
  assetTypes,
  assetWords,
  checklistDocs,
  checklists,
  devices,
  intervals,
  people,
  places,
  sources,
} from "../schema/register.ts";
import { keysOf } from "./keys-of.ts";
import { Shelf } from "./shelf.ts";
import { withResult } from "./with-result.ts";

/** What the projections hold for a batch of entries, and what the batch changes in them. */
export class Batch {
  readonly people = new Shelf(people, (row) => row.id);
  readonly devices = new Shelf(devices, (row) => row.id);
  readonly places = new Shelf(places, (row) => row.id);
  readonly assetTypes = new Shelf(assetTypes, (row) => row.name);
  readonly checklists = new Shelf(checklists, (row) => issueKey(row.id, row.issue));
  readonly checklistDocs = new Shelf(checklistDocs, (row) => row.hash);
  readonly intervals = new Shelf(intervals, (row) => row.id);
  readonly assets = new Shelf(assets, (row) => row.id);
  readonly assetWords = new Shelf(assetWords, (row) => `${row.asset} ${row.word}`);
  readonly sources = new Shelf(sources, (row) => row.entry);
  readonly results = new Shelf(results, (row) => row.entry);
  readonly lastResults = new Shelf(lastResults, (row) => lastKey(row.asset, row.checklist));
  readonly defects = new Shelf(defects, (row) => row.id);
  readonly counters = new Shelf(counters, (row) => row.name);
  readonly events = new Shelf(events, (row) => row.entry);
  readonly statuses = new Shelf(statuses, (row) => row.entry);
  readonly overrides = new Shelf(overrides, (row) => overrideKey(row.asset, row.interval));
  readonly calendars = new Shelf(calendars, (row) => row.site);
  readonly holidays = new Shelf(holidays, (row) => `${row.region} ${row.year}`);
  readonly teams = new Shelf(teams, (row) => row.id);
  readonly keepers = new Shelf(keepers, (row) => row.place);
  readonly times = new Shelf(times, (row) => row.person);
  estateName: string | null = null;
  /** Intervals that ended, with the entry that says so. */
  readonly endedAt = new Map<string, number>();
  /** Assets whose windows are to be computed again. */
  readonly dueAssets = new Set<string>();
  /** Intervals, sites and regions all of whose windows are, with the entry that asks for it. */
  readonly dueIntervals = new Map<string, number>();
  readonly dueSites = new Map<string, number>();
  readonly dueRegions = new Map<string, number>();
  /** Inspections whose samples have got results, with those results and judged with them. */
  readonly resulted = new Map<string, Sealed<"inspection">>();
  /** Id of the open defect by asset, checklist and point. */
  readonly openDefects = new Map<string, string>();

  /** Reads what the entries will touch: a fixed number of queries, however many entries. */
  async load(tx: Db, sealed: readonly Sealed[]): Promise<void> {
    const asked = keysOf(sealed);
    await this.#loadResulted(tx, asked, sealed[0]?.leaf.seq ?? 0);
    const read = async (
      keys: ReadonlySet<string>,
      load: (keys: ReadonlySet<string>) => Promise<void>,
    ) => {
      if (keys.size > 0) await load(keys);
    };
    await read(asked.people, (keys) => this.people.load(tx, among(people.id, keys)));
    await read(asked.devices, (keys) => this.devices.load(tx, among(devices.id, keys)));
    await read(asked.places, (keys) => this.places.load(tx, among(places.id, keys)));
    await read(asked.types, (keys) => this.assetTypes.load(tx, among(assetTypes.name, keys)));
    // They are few, and one may cover any other.
    if (asked.intervals) await this.intervals.load(tx, sql`true`);
    await read(asked.overridden, (keys) => this.overrides.load(tx, among(overrides.asset, keys)));
    await read(asked.checklists, (keys) => this.checklists.load(tx, among(checklists.id, keys)));
    await read(asked.documents, (keys) =>
      this.checklistDocs.load(tx, among(checklistDocs.hash, keys)),
    );
    await read(asked.assets, (keys) => this.assets.load(tx, among(assets.id, keys)));
    await read(asked.inspected, async (keys) => {
      await this.lastResults.load(tx, among(lastResults.asset, keys));
      const open = and(among(defects.asset, keys), eq(defects.open, true));
      // What a result changes may have been put right since: closed defects have to be known too.
      const resulted = among(defects.asset, asked.resultedAssets);
      await this.#loadDefects(tx, or(open, resulted, among(defects.id, asked.defects)));
      await this.counters.load(tx, eq(counters.name, "defects"));
    });
    await read(asked.moved, (keys) => this.#loadDefects(tx, among(defects.asset, keys)));
    if (asked.inspected.size === 0 && asked.defects.size > 0)
      await this.#loadDefects(tx, among(defects.id, asked.defects));
  }

  /** The log holds every entry of the batch already: only those before it count. */
  async #loadResulted(tx: Db, asked: ReturnType<typeof keysOf>, from: number): Promise<void> {
    if (asked.resulted.size === 0) return;
    const one = or(among(entries.id, asked.resulted), eq(entries.kind, "result-received"));
    const docs = await tx
      .select({ entry: entryDocs.entry, leaf: entryDocs.leaf })
      .from(entries)
      .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
      .where(and(among(entries.asset, asked.resultedAssets), one))
      .orderBy(asc(entries.seq));
    for (const doc of docs) {
      const { entry, leaf }: Sealed = { entry: JSON.parse(doc.entry), leaf: JSON.parse(doc.leaf) };
      if (entry.kind === "inspection") {
        this.resulted.set(entry.id, { entry, leaf });
        asked.documents.add(entry.body.checklist.hash);
      } else if (entry.kind === "result-received" && leaf.seq < from) {
        this.takeResult(entry, leaf);
      }
    }
  }

  /** Holds an inspection together with a result of it; gives it as it was and is, if it is held. */
  takeResult({ body }: EntryOf<"result-received">, { judgement }: SealedLeaf) {
    const held = this.resulted.get(body.of);
    if (held === undefined || held.leaf.judgement === null || judgement === null) return undefined;
    const is = { entry: withResult(held.entry, body), leaf: { ...held.leaf, judgement } };
    this.resulted.set(body.of, is);
    return { was: held.leaf.judgement, is };
  }

  async #loadDefects(tx: Db, where: SQL | undefined): Promise<void> {
    if (where === undefined) return;
    await this.defects.load(tx, where);
    for (const row of this.defects.values())
      if (row.open) this.openDefects.set(defectKey(row.asset, row.checklist, row.point), row.id);
  }

  nextNumber(counter: string): number {
    const value = (this.counters.get(counter)?.value ?? 0) + 1;
    this.counters.put({ name: counter, value });
    return value;
  }

  async flush(tx: Db): Promise<void> {
    if (this.estateName !== null) await tx.update(estate).set({ name: this.estateName });
    await this.people.flush(tx);
    await this.devices.flush(tx);
    await this.places.flush(tx);
    await this.assetTypes.flush(tx);
    await this.checklists.flush(tx);
    await this.checklistDocs.flush(tx);
    await this.intervals.flush(tx);
    if (this.endedAt.size > 0)
      await tx.delete(intervals).where(among(intervals.id, this.endedAt.keys()));
    await this.assets.flush(tx);
    await this.assetWords.flush(tx);
    await this.sources.flush(tx);
    await this.results.flush(tx);
    await this.lastResults.flush(tx);
    await this.defects.flush(tx);
    await this.counters.flush(tx);
    await this.events.flush(tx);
    await this.statuses.flush(tx);
    await this.overrides.flush(tx);
    await this.calendars.flush(tx);
    await this.holidays.flush(tx);
    await this.teams.flush(tx);
    await this.keepers.flush(tx);
    await this.times.flush(tx);
  }
}

export const issueKey = (id: string, issue: number): string => `${id} ${issue}`;
export const overrideKey = (asset: string, interval: string): string => `${asset} ${interval}`;
export const lastKey = (asset: string, checklist: string): string => `${asset} ${checklist}`;
export const defectKey = (asset: string, checklist: string, point: string): string =>
  `${asset} ${checklist} ${point}`;
