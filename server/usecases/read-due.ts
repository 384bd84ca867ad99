import {
  type CivilDate,
  type DueRow,
  type DueStatus,
  formatCivilDate,
  type Page,
  statusOn,
} from "@roundbook/schemas";
import { and, eq, gte, sql } from "drizzle-orm";
import { dayOf } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { lastResults, windows } from "../store/schema/due.ts";
import { assets, checklists, intervals } from "../store/schema/register.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import type { Context } from "./context.ts";
import { decodeCursor, pageOf, pageSize } from "./cursor.ts";
import { hasStatus } from "./due-filter.ts";
import { type DueScope, dueLegs } from "./due-scope.ts";
import { findWords } from "./find-words.ts";

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

/** Minutes that a check is expected to take, by checklist: those of its newest issue. */
export type MinutesOf = ReadonlyMap<string, number>;

export async function readMinutes(db: Db): Promise<MinutesOf> {
  const rows = await db
    .select({ id: checklists.id, minutes: checklists.minutes })
    .from(checklists)
    .orderBy(checklists.id, checklists.issue);
  return new Map(rows.map(({ id, minutes }) => [id, minutes]));
}

type WindowRow = typeof windows.$inferSelect;

function closureOf({ state, stateFrom, reopens }: WindowRow) {
  return state === null || state === "undecided" || stateFrom === null || reopens === null
    ? undefined
    : { status: state, from: stateFrom as CivilDate, reopens: reopens as CivilDate };
}

/** How a window stands on a day. */
export function statusOfRow(window: WindowRow, on: number): DueStatus {
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

export function dueRow(row: Stored, on: number, minutes: MinutesOf): DueRow {
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
    minutes: minutes.get(checklist) ?? 0,
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

export async function dayAsked(ctx: Context, on?: string, site?: string): Promise<number> {
  return dayOf(on ?? civilNow(ctx, await estateZone(ctx, site)));
}

/** What a status is looked for in: few rows of a partial index, or the order of the list. */
const isRare = (status: DueStatus | undefined): boolean =>
  status === "never-done" ||
  status === "blocked" ||
  status === "excused" ||
  status === "undecided" ||
  status === "not-yet";

/** No window is later than the longest: what was due before it is over, and not looked at. */
async function lateBound(db: Db, status: DueStatus | undefined, on: number) {
  if (status !== "late-window" && status !== "excused") return undefined;
  const [row] = await db
    .select({ longest: sql<number | null>`max(${windows.latest} - ${windows.due})` })
    .from(windows);
  return gte(windows.due, on - (row?.longest ?? 0));
}

/**
 * Keyset by (due, id): a page costs the same however far down the list it lies. What is not yet due
 * comes in the order in which its windows open.
 */
export async function readDue(ctx: Context, asked: DueAsked): Promise<Page<DueRow>> {
  const { db } = ctx.store;
  const { status } = asked;
  const on = await dayAsked(ctx, asked.on, asked.site);
  const size = pageSize(asked.limit);
  const words = await findWords(db, asked.q);
  const column = status === "not-yet" ? windows.earliest : windows.due;
  // Led by the few assets that match, the index of due dates must not offer itself for the order.
  const order = words.few ? sql`+${column}` : sql`${column}`;
  const after = asked.cursor && decodeCursor(asked.cursor, ["number", "number"]);
  const legs = await dueLegs(ctx, asked, isRare(status) || words.few);
  const state = status === undefined ? undefined : hasStatus(status, on);
  const bound = await lateBound(db, status, on);
  const stored: Stored[] = [];
  for (const leg of legs) {
    const beyond = after ? sql`(${order}, ${windows.id}) > (${after[0]}, ${after[1]})` : undefined;
    const found = await selectDue(db)
      .where(and(...leg, state, bound, words.where, beyond))
      .orderBy(order, windows.id)
      .limit(size + 1);
    stored.push(...found);
  }
  const minutes = await readMinutes(db);
  const keyOf = ({ window }: Stored) =>
    [status === "not-yet" ? window.earliest : window.due, window.id] as const;
  if (legs.length > 1)
    stored.sort((a, b) => keyOf(a)[0] - keyOf(b)[0] || keyOf(a)[1] - keyOf(b)[1]);
  return pageOf(stored.slice(0, size + 1), size, keyOf, (row) => dueRow(row, on, minutes));
}
