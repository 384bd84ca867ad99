import {
  type CalendarRow,
  type CivilDate,
  civilParts,
  DEVICE_KINDS,
  type EntryKind,
  type LastResult,
  type SiteBundle,
  type SiteChanges,
  usesPrevious,
} from "@roundbook/schemas";
import { and, asc, eq, gt, lte, type SQL, sql } from "drizzle-orm";
import type { SQLiteColumn } from "drizzle-orm/sqlite-core";
import { among } from "../store/among.ts";
import { readLogState } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { defects } from "../store/schema/defects.ts";
import { lastResults, recomputes, windows } from "../store/schema/due.ts";
import { entries } from "../store/schema/log.ts";
import { assets, intervals } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { lastAnswers, lastOf } from "./previous-answers.ts";
import { assetRows } from "./read-assets.ts";
import { readChecklists } from "./read-checklists.ts";
import { defectRow, selectDefects } from "./read-defects.ts";
import { civil, dayAsked, dueRow, selectDue } from "./read-due.ts";
import { readOverrides } from "./read-overrides.ts";
import { readAssetTypes, readIntervals, readPlaces } from "./read-register.ts";
import { readCalendarRows } from "./read-teams.ts";
import { readAwaited } from "./received-results.ts";

async function lastResultsOf(
  ctx: Context,
  which: SQL | undefined,
  comparing: ReadonlySet<string>,
): Promise<LastResult[]> {
  const rows = await ctx.store.db
    .select({ last: lastResults })
    .from(assets)
    .innerJoin(lastResults, eq(lastResults.asset, assets.id))
    .where(which);
  const compared = rows.filter(({ last }) => comparing.has(last.checklist));
  const assetIds = new Set(compared.map(({ last }) => last.asset));
  const previous = await lastAnswers(ctx.store.db, assetIds, comparing);
  const before = (asset: string, checklist: string) => {
    const answers = previous.get(lastOf(asset, checklist));
    return answers === undefined ? {} : { previous: answers };
  };
  // Whatever waits for a result is undecided, so that nothing else has to be looked at.
  const undecided = rows.filter(({ last }) => last.overall === "undecided");
  const awaited = await readAwaited(ctx.store.db, new Set(undecided.map(({ last }) => last.entry)));
  return rows.map(({ last }) => ({
    asset: last.asset,
    checklist: last.checklist,
    entry: last.entry,
    on: civil(last.on),
    overall: last.overall,
    ...(awaited.has(last.entry) ? { awaited: true as const } : {}),
    readings: last.readings,
    ...before(last.asset, last.checklist),
  }));
}

/** A device asks no further ahead than its next dates. */
const YEARS_KEPT = [-1, 0, 1, 2];

function siteDays({ calendar, holidays }: CalendarRow, today: number): SiteBundle["calendar"] {
  const { region: _, ...own } = calendar;
  const { year } = civilParts(today as CivilDate);
  const kept = new Set(YEARS_KEPT.map((ahead) => String(year + ahead)));
  return { ...own, holidays: holidays.filter(({ date }) => kept.has(date.slice(0, 4))) };
}

/**
 * What dates follow from beside entries: the generations of intervals that readers see, and how far
 * the background is. Another text means that dates may have changed without an entry.
 */
async function readStamp(db: Db): Promise<string> {
  const [seen] = await db
    .select({ sum: sql<number>`coalesce(sum(${intervals.generation}), 0)` })
    .from(intervals);
  const jobs = await db
    .select({ id: recomputes.id, kind: recomputes.kind, done: recomputes.done })
    .from(recomputes)
    .orderBy(recomputes.id);
  const working = jobs.filter(({ kind }) => kind !== "sweep");
  return [seen?.sum ?? 0, ...working.map(({ id, done }) => `${id}:${done}`)].join(".");
}

/** Types, intervals and issued checklists that assets of some types use. */
async function readUsed(ctx: Context, types: ReadonlySet<string>) {
  const assetTypes = (await readAssetTypes(ctx)).filter((type) => types.has(type.assetType));
  const all = await readIntervals(ctx);
  const own = all.filter(({ definition }) => types.has(definition.assetType));
  const used = new Set([
    ...assetTypes.flatMap((type) => type.checklists),
    ...own.map(({ definition }) => definition.checklist),
  ]);
  return { assetTypes, intervals: own, checklists: await readChecklists(ctx, used) };
}

/** What changes of assets when entries about them are sealed; of all of a site, or of some. */
async function readAssetsAt(ctx: Context, site: string, day: number, ids?: readonly string[]) {
  const { db } = ctx.store;
  const some = (column: SQLiteColumn) => (ids === undefined ? undefined : among(column, ids));
  const which = and(eq(assets.site, site), some(assets.id));
  const stored = await db.select().from(assets).where(which);
  const due = await selectDue(db)
    .where(and(eq(windows.site, site), some(windows.asset)))
    .orderBy(asc(windows.due), asc(windows.asset), asc(windows.interval));
  const open = await selectDefects(db)
    .where(and(eq(defects.site, site), eq(defects.open, true), some(defects.asset)))
    .orderBy(asc(defects.number));
  const used = await readUsed(ctx, new Set(stored.map((asset) => asset.assetType)));
  const comparing = used.checklists.filter(({ document }) => usesPrevious(document));
  return {
    used,
    rows: {
      assets: await assetRows(db, stored),
      due: due.map((row) => dueRow(row, day)),
      overrides: await readOverrides(
        ctx,
        stored.map(({ id }) => id),
      ),
      lastResults: await lastResultsOf(ctx, which, new Set(comparing.map(({ id }) => id))),
      defects: open.map(defectRow),
    },
  };
}

/** All a device needs for one site's round; null for what is no site. */
export async function readBundle(
  ctx: Context,
  site: string,
  today?: string,
): Promise<SiteBundle | null> {
  const { db } = ctx.store;
  const places = await readPlaces(ctx, site);
  const own = places.find((place) => place.id === site);
  if (own === undefined || own.level !== "site") return null;
  // Read first: what is sealed meanwhile may be in the bundle already, and is asked for once more.
  const cursor = (await readLogState(db)).size;
  const stamp = await readStamp(db);
  const day = await dayAsked(ctx, today, site);
  const { used, rows } = await readAssetsAt(ctx, site, day);
  const calendar = (await readCalendarRows(ctx)).find((row) => row.site === site);
  return {
    site: own,
    places,
    ...used,
    ...rows,
    calendar: calendar === undefined ? {} : siteDays(calendar, day),
    cursor,
    stamp,
    today: civil(day),
  };
}

/** Changes of more assets than these are sooner sent as a whole site. */
const MOST_CHANGED = 500;
/** Entries that change no more than their asset, or nothing of a round; any other may change all. */
const OF_ONE_ASSET: ReadonlySet<EntryKind> = new Set<EntryKind>([
  ...DEVICE_KINDS,
  "brought-forward",
  "interval-overridden",
  "override-ended",
  "particulars-changed",
  "device-enrolled",
  "person-added",
  "time-set",
]);

/**
 * What changed at a site since a bundle was read: the rows of the assets that entries were about
 * since. Null where the whole has to be read again: rules, places or types changed, dates changed
 * without an entry, a year ended, or most of the site changed.
 */
export async function readChanges(
  ctx: Context,
  site: string,
  since: { readonly cursor: number; readonly stamp: string; readonly today: string },
): Promise<SiteChanges | null> {
  const { db } = ctx.store;
  const cursor = (await readLogState(db)).size;
  const stamp = await readStamp(db);
  const day = await dayAsked(ctx, undefined, site);
  const today = civil(day);
  if (stamp !== since.stamp || since.cursor > cursor) return null;
  if (today.slice(0, 4) !== since.today.slice(0, 4)) return null;
  const sealed = await db
    .selectDistinct({ kind: entries.kind, asset: entries.asset })
    .from(entries)
    .where(and(gt(entries.seq, since.cursor), lte(entries.seq, cursor)))
    .limit(MOST_CHANGED + 1);
  if (sealed.length > MOST_CHANGED) return null;
  if (sealed.some(({ kind }) => !OF_ONE_ASSET.has(kind))) return null;
  const ids = [...new Set(sealed.flatMap(({ asset }) => asset ?? []))];
  const { used, rows } = await readAssetsAt(ctx, site, day, ids);
  const here = new Set(rows.assets.map(({ id }) => id));
  // Nothing of another site is named.
  const known = await db.select({ id: assets.id }).from(assets).where(among(assets.id, ids));
  const gone = known.map(({ id }) => id).filter((id) => !here.has(id));
  return { ...rows, ...used, gone, cursor, stamp, today };
}
