import {
  type CivilDate,
  type DueRow,
  type DueStatus,
  formatCivilDate,
  type Page,
  parseCivilDate,
  problem,
  statusOn,
} from "@roundbook/schemas";
import { and, eq, sql } from "drizzle-orm";
import { dayOf } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { lastResults, windows } from "../store/schema/due.ts";
import { assets, checklists, intervals } from "../store/schema/register.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import type { Context } from "./context.ts";
import { decodeCursor, pageOf, pageSize } from "./cursor.ts";
import { standing } from "./due-filter.ts";
import { type DueScope, dueLegs } from "./due-scope.ts";
import { findWords } from "./find-words.ts";
import { Refusal } from "./refusal.ts";

export interface DueAsked extends DueScope {
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
  window: {
    id: windows.id,
    asset: windows.asset,
    site: windows.site,
    interval: windows.interval,
    keeper: windows.keeper,
    earliest: windows.earliest,
    due: windows.due,
    latest: windows.latest,
    lastDone: windows.lastDone,
    state: windows.state,
    stateFrom: windows.stateFrom,
    reopens: windows.reopens,
    why: windows.why,
  },
  number: assets.number,
  description: assets.description,
  place: assets.place,
  intervalTitle: intervals.title,
  assetType: assets.assetType,
  checklist: intervals.checklist,
  lastVerdict: lastResults.overall,
  /** That the check is expected to take, by the newest issue of its checklist. */
  minutes: sql<number | null>`(select ${checklists.minutes} from ${checklists}
    where ${checklists.id} = ${intervals.checklist} order by ${checklists.issue} desc limit 1)`,
};

/**
 * The interval of a window, and the generation of it that readers see. The plus keeps the few
 * intervals from leading the many windows, which are read in the order of their index.
 */
export const isSeen = sql`${intervals.id} = +${windows.interval} and ${intervals.generation} = +${windows.generation}`;

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

type WindowRow = Stored["window"];
type Dates = Omit<WindowRow, "id" | "asset" | "site" | "interval" | "keeper" | "why">;

function closureOf({ state, stateFrom, reopens }: Dates) {
  return state === null || state === "undecided" || stateFrom === null || reopens === null
    ? undefined
    : { status: state, from: stateFrom as CivilDate, reopens: reopens as CivilDate };
}

/** How a window stands on a day. */
export function statusOfRow(window: Dates, on: number): DueStatus {
  const { earliest, due, latest, lastDone, state } = window;
  const closure = closureOf(window);
  return statusOn(
    {
      earliest: earliest as CivilDate,
      due: due as CivilDate,
      latest: latest as CivilDate,
      lastDone: lastDone as CivilDate | null,
      ...(closure === undefined ? {} : { closure }),
      ...(state === "undecided" ? { undecided: true } : {}),
    },
    on as CivilDate,
  );
}

export function dueRow(row: Stored, on: number): DueRow {
  const { window, number, description, place, assetType, intervalTitle, checklist } = row;
  const { asset, site, interval, earliest, due, latest, lastDone, why, keeper } = window;
  const closure = closureOf(window);
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
    minutes: row.minutes ?? 0,
    earliest: civil(earliest),
    due: civil(due),
    latest: civil(latest),
    status: statusOfRow(window, on),
    lastDone: lastDone === null ? null : civil(lastDone),
    lastVerdict: row.lastVerdict,
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

/** A day of a query, by its name. @throws Refusal for one that no month has. */
export function dayOfQuery(name: string, date: string): number {
  const day = parseCivilDate(date);
  if (day !== undefined) return day;
  throw new Refusal("invalid", "query-not-right", [problem(`/${name}`, "no-such-date", { date })]);
}

export async function dayAsked(ctx: Context, on?: string, site?: string): Promise<number> {
  return on === undefined
    ? dayOf(civilNow(ctx, await estateZone(ctx, site)))
    : dayOfQuery("on", on);
}

/** One page of the due list as queries whose rows are merged, each read in order by one index. */
export async function dueQueries(ctx: Context, asked: DueAsked) {
  const { db } = ctx.store;
  const { status } = asked;
  const on = await dayAsked(ctx, asked.on, asked.site);
  const size = pageSize(asked.limit);
  const words = await findWords(db, asked.q);
  const column = status === "not-yet" ? windows.earliest : windows.due;
  const after = asked.cursor && decodeCursor(asked.cursor, ["number", "number"]);
  const { legs, sorted } = await dueLegs(ctx, asked, words.few);
  // Where few rows are led by something else, the index of the order must not offer itself.
  const order = sorted ? sql`+${column}` : sql`${column}`;
  const where = and(
    await standing(db, status, on, sorted),
    words.where,
    after ? sql`(${order}, ${windows.id}) > (${after[0]}, ${after[1]})` : undefined,
  );
  const queries = legs.map((leg) =>
    selectDue(db)
      .where(and(...leg, where))
      .orderBy(order, windows.id)
      .limit(size + 1),
  );
  return { queries, on, size };
}

/**
 * Keyset by (due, id): a page costs the same however far down the list it lies. What is not yet due
 * comes in the order in which its windows open.
 */
export async function readDue(ctx: Context, asked: DueAsked): Promise<Page<DueRow>> {
  const { queries, on, size } = await dueQueries(ctx, asked);
  const stored: Stored[] = [];
  for (const query of queries) stored.push(...(await query));
  const keyOf = ({ window }: Stored) =>
    [asked.status === "not-yet" ? window.earliest : window.due, window.id] as const;
  if (queries.length > 1)
    stored.sort((a, b) => keyOf(a)[0] - keyOf(b)[0] || keyOf(a)[1] - keyOf(b)[1]);
  return pageOf(stored.slice(0, size + 1), size, keyOf, (row) => dueRow(row, on));
}
