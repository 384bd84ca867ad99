import { eq, type SQL, sql } from "drizzle-orm";
import { among } from "../store/among.ts";
import { windows } from "../store/schema/due.ts";
import type { Context } from "./context.ts";
import { readPlaces } from "./read-register.ts";
import { keeperIds } from "./read-teams.ts";

export interface DueScope {
  readonly site?: string;
  /** With what lies in it. */
  readonly place?: string;
  /** A person, with the teams they are in, or a team. */
  readonly keeper?: string;
  readonly assetType?: string;
}

/** Rooms of a building, teams of a person: beyond, one sorted query costs less than many. */
const MOST_LEGS = 64;

/** A place and all that lies in it. */
async function placesIn(ctx: Context, place: string): Promise<string[]> {
  const all = await readPlaces(ctx);
  const found = [place];
  for (const at of found)
    found.push(...all.filter(({ parent }) => parent === at).map(({ id }) => id));
  return found;
}

/** Windows of a type that are sooner sorted than looked for among the many of a place or person. */
const FEW = 1000;

/** How the rows of a scope are read: by one condition or several, each in order unless `sorted`. */
export interface DueLegs {
  readonly legs: readonly (readonly SQL[])[];
  /** Few rows, whose order no index gives. */
  readonly sorted: boolean;
}

async function isFew(ctx: Context, assetType: string): Promise<boolean> {
  const [row] = await ctx.store.db.all<{ count: number }>(
    sql`select count(*) as count from
      (select 1 from ${windows} where ${windows.assetType} = ${assetType} limit ${FEW + 1})`,
  );
  return (row?.count ?? 0) <= FEW;
}

type Scoped = "site" | "place" | "keeper" | "assetType";
type Wanted = Partial<Readonly<Record<Scoped, readonly string[]>>>;

/** Only filters: with the plus no index of the column offers itself to lead. */
const filterBy = (column: Scoped, [first, ...more]: readonly string[]): SQL =>
  more.length === 0
    ? sql`+${windows[column]} = ${first ?? ""}`
    : sql`+${windows[column]} in (select value from json_each(${JSON.stringify([first, ...more])}))`;

function ledBy(leading: Scoped | undefined, wanted: Wanted): SQL[][] {
  const rest = Object.entries(wanted)
    .filter(([column]) => column !== leading)
    .map(([column, ids]) => filterBy(column as Scoped, ids));
  if (leading === undefined) return [rest];
  const ids = wanted[leading] ?? [];
  if (ids.length > MOST_LEGS) return [[among(windows[leading], ids), ...rest]];
  return ids.map((id) => [eq(windows[leading], id), ...rest]);
}

/**
 * What is asked for as one or more conditions, each read in order by one index and merged: of a
 * place that has rooms, or a person who is in teams, each part has an order of its own. The
 * narrowest scope leads and the rest filters. `ledByAssets`: a few known assets lead instead.
 */
export async function dueLegs(
  ctx: Context,
  asked: DueScope,
  ledByAssets = false,
): Promise<DueLegs> {
  const wanted: Wanted = {
    ...(asked.place !== undefined && { place: await placesIn(ctx, asked.place) }),
    ...(asked.keeper !== undefined && { keeper: await keeperIds(ctx, asked.keeper) }),
    ...(asked.site !== undefined && { site: [asked.site] }),
    ...(asked.assetType !== undefined && { assetType: [asked.assetType] }),
  };
  if (ledByAssets) return { legs: ledBy(undefined, wanted), sorted: true };
  const [leading] = Object.keys(wanted) as Scoped[];
  const { assetType } = asked;
  if (assetType !== undefined && leading !== "assetType" && (await isFew(ctx, assetType)))
    return { legs: ledBy("assetType", wanted), sorted: true };
  const sorted = leading !== undefined && (wanted[leading]?.length ?? 0) > MOST_LEGS;
  return { legs: ledBy(leading, wanted), sorted };
}
