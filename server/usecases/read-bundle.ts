import {
  type CalendarRow,
  type CivilDate,
  civilParts,
  type LastResult,
  type SiteBundle,
  usesPrevious,
} from "@roundbook/schemas";
import { and, asc, eq } from "drizzle-orm";
import { readLogState } from "../store/append-log.ts";
import { defects } from "../store/schema/defects.ts";
import { lastResults, windows } from "../store/schema/due.ts";
import { assets } from "../store/schema/register.ts";
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

async function lastResultsAt(
  ctx: Context,
  site: string,
  comparing: ReadonlySet<string>,
): Promise<LastResult[]> {
  const rows = await ctx.store.db
    .select({ last: lastResults })
    .from(assets)
    .innerJoin(lastResults, eq(lastResults.asset, assets.id))
    .where(eq(assets.site, site));
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
  const day = await dayAsked(ctx, today, site);
  const stored = await db.select().from(assets).where(eq(assets.site, site));
  const types = new Set(stored.map((asset) => asset.assetType));
  const due = await selectDue(db)
    .where(eq(windows.site, site))
    .orderBy(asc(windows.due), asc(windows.asset), asc(windows.interval));
  const open = await selectDefects(db)
    .where(and(eq(defects.site, site), eq(defects.open, true)))
    .orderBy(asc(defects.number));
  const assetTypes = (await readAssetTypes(ctx)).filter((type) => types.has(type.assetType));
  const intervals = (await readIntervals(ctx)).filter(({ definition }) =>
    types.has(definition.assetType),
  );
  const used = new Set([
    ...assetTypes.flatMap((type) => type.checklists),
    ...intervals.map(({ definition }) => definition.checklist),
  ]);
  const issued = await readChecklists(ctx, used);
  const calendar = (await readCalendarRows(ctx)).find((row) => row.site === site);
  const comparing = issued.filter(({ document }) => usesPrevious(document)).map(({ id }) => id);
  return {
    site: own,
    places,
    assets: await assetRows(db, stored),
    due: due.map((row) => dueRow(row, day)),
    assetTypes,
    intervals,
    calendar: calendar === undefined ? {} : siteDays(calendar, day),
    overrides: await readOverrides(
      ctx,
      stored.map(({ id }) => id),
    ),
    checklists: issued,
    lastResults: await lastResultsAt(ctx, site, new Set(comparing)),
    defects: open.map(defectRow),
    cursor,
    today: civil(day),
  };
}
