import {
  type CivilDate,
  type DueRow,
  type DueStatus,
  formatCivilDate,
  type Page,
  statusOn,
} from "@roundbook/schemas";
import { and, eq, isNull, lte, or, type SQL, sql } from "drizzle-orm";
import { dayOf } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { lastResults, windows } from "../store/schema/due.ts";
import { assets, intervals } from "../store/schema/register.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import type { Context } from "./context.ts";
import { decodeCursor, pageOf, pageSize } from "./cursor.ts";
import { hasStatus } from "./due-filter.ts";
import { findWords } from "./find-words.ts";

export interface DueAsked {
  readonly site?: string;
  /** YYYY-MM-DD; today at the site when absent. */
  readonly on?: string;
  readonly status?: DueStatus;
  /** Words of the asset. */
  readonly q?: string;
  readonly cursor?: string;
  readonly limit?: number;
}

export const civil = (day: number): string => formatCivilDate(day as CivilDate);

const COLUMNS = {
  window: windows,
  number: assets.number,
  description: assets.description,
  place: assets.place,
  intervalTitle: intervals.title,
  assetType: assets.assetType,
  checklist: intervals.checklist,
  lastVerdict: lastResults.overall,
};

/**
 * The interval of a window, and the generation of it that readers see. The plus keeps the few
 * intervals from leading the many windows, which are read in the order of their index.
 */
const isSeen = sql`${intervals.id} = +${windows.interval} and ${intervals.generation} = +${windows.generation}`;

/** Windows with what a row of the due list shows beside them; led by the windows. */
export const selectDue = (db: Db) =>
  db
    .select(COLUMNS)
    .from(windows)
    .innerJoin(assets, eq(assets.id, windows.asset))
    .innerJoin(intervals, isSeen)
    .leftJoin(
      lastResults,
      and(eq(lastResults.asset, windows.asset), eq(lastResults.checklist, intervals.checklist)),
    );
type Stored = Awaited<ReturnType<typeof selectDue>>[number];

export function dueRow(row: Stored, on: number): DueRow {
  const { window, number, description, place, assetType, intervalTitle, checklist } = row;
  const { lastVerdict } = row;
  const { asset, site, interval, earliest, due, latest, from, lastDone, why } = window;
  const { state, stateFrom, reopens, keeper } = window;
  const closure =
    state === null || state === "undecided" || stateFrom === null || reopens === null
      ? undefined
      : { status: state, from: stateFrom as CivilDate, reopens: reopens as CivilDate };
  const days = {
    earliest: earliest as CivilDate,
    due: due as CivilDate,
    latest: latest as CivilDate,
    lastDone: lastDone as CivilDate | null,
  };
  return {
    asset,
    number,
    description,
    site,
    place,
    interval,
    intervalTitle,
    assetType,
    checklist,
    keeper,
    minutes: 0,
    earliest: civil(earliest),
    due: civil(due),
    latest: civil(latest),
    status: statusOn(
      {
        ...days,
        from,
        why,
        ...(closure === undefined ? {} : { closure }),
        ...(state === "undecided" ? { undecided: true } : {}),
      },
      on as CivilDate,
    ),
    lastDone: lastDone === null ? null : civil(lastDone),
    lastVerdict,
    why,
    ...(closure === undefined
      ? {}
      : {
          closure: {
            status: closure.status,
            from: civil(closure.from),
            reopens: civil(closure.reopens),
          },
        }),
  };
}

export async function dayAsked(ctx: Context, on?: string, site?: string): Promise<number> {
  return dayOf(on ?? civilNow(ctx, await estateZone(ctx, site)));
}

/** Keyset by (due, id): a page costs the same however far down the list it lies. */
export async function readDue(ctx: Context, asked: DueAsked): Promise<Page<DueRow>> {
  const { db } = ctx.store;
  const on = await dayAsked(ctx, asked.on, asked.site);
  const size = pageSize(asked.limit);
  const words = await findWords(db, asked.q);
  // Led by the few assets that match, the index of due dates must not offer itself for the order.
  const due = words.few ? sql`+${windows.due}` : sql`${windows.due}`;
  const after = asked.cursor && decodeCursor(asked.cursor, ["number", "number"]);
  const stored = await selectDue(db)
    .where(
      and(
        asked.site === undefined ? undefined : eq(windows.site, asked.site),
        asked.status === undefined ? undefined : hasStatus(asked.status, on),
        words.where,
        after ? sql`(${due}, ${windows.id}) > (${after[0]}, ${after[1]})` : undefined,
      ),
    )
    .orderBy(due, windows.id)
    .limit(size + 1);
  return pageOf(
    stored,
    size,
    ({ window }) => [window.due, window.id],
    (row) => dueRow(row, on),
  );
}

/** Beyond this a count is not worth its time: the reader is told "more than". */
const COUNTED = 1000;

/**
 * How much is overdue, and how much is due now: in its window from the due date on, or never done
 * and expected by now. Each is counted up to `upto`; `capped` when there is more.
 */
export async function countDue(
  ctx: Context,
  asked: Pick<DueAsked, "site" | "on" | "q">,
): Promise<{ overdue: number; due: number; upto: number; capped: boolean }> {
  const { db } = ctx.store;
  const on = await dayAsked(ctx, asked.on, asked.site);
  const words = await findWords(db, asked.q);
  const count = async (state: SQL | undefined): Promise<number> => {
    const site = asked.site === undefined ? undefined : eq(windows.site, asked.site);
    const query = db
      .select({ asset: windows.asset })
      .from(windows)
      .innerJoin(intervals, isSeen)
      .$dynamic();
    if (words.where) query.innerJoin(assets, eq(assets.id, windows.asset));
    return (await query.where(and(site, state, words.where)).limit(COUNTED + 1)).length;
  };
  const overdue = await count(hasStatus("overdue", on));
  const expected = and(isNull(windows.lastDone), lte(windows.due, on));
  const due = await count(or(hasStatus("due", on), hasStatus("late-window", on), expected));
  return {
    overdue: Math.min(overdue, COUNTED),
    due: Math.min(due, COUNTED),
    upto: COUNTED,
    capped: overdue > COUNTED || due > COUNTED,
  };
}
