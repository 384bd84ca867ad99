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

type Leading = "place" | "keeper" | "site" | "assetType";

/** What leads is read off its index; the rest only filters, so that no other index offers itself. */
const filters = (asked: DueScope, leading: Leading | undefined): SQL[] => {
  const { site, assetType } = asked;
  return [
    ...(site !== undefined && leading !== "site" ? [sql`+${windows.site} = ${site}`] : []),
    ...(assetType !== undefined && leading !== "assetType"
      ? [sql`+${windows.assetType} = ${assetType}`]
      : []),
  ];
};

const oneOf = (column: typeof windows.place | typeof windows.keeper, ids: readonly string[]) =>
  ids.length > MOST_LEGS ? [among(column, ids)] : ids.map((id) => eq(column, id));

const filterOf = (column: typeof windows.place | typeof windows.keeper, ids: readonly string[]) =>
  sql`+${column} in (select value from json_each(${JSON.stringify(ids)}))`;

/**
 * What is asked for as one or more conditions, each read in order by one index and merged: of a
 * place that has rooms, or a person who is in teams, each part has an order of its own.
 * `ordered`: the order alone leads, as where a partial index holds few.
 */
export async function dueLegs(
  ctx: Context,
  asked: DueScope,
  ordered: boolean,
): Promise<readonly (readonly SQL[])[]> {
  const places = asked.place === undefined ? undefined : await placesIn(ctx, asked.place);
  const keepers = asked.keeper === undefined ? undefined : await keeperIds(ctx, asked.keeper);
  const byKeeper = keepers === undefined ? [] : [filterOf(windows.keeper, keepers)];
  if (ordered) {
    const byPlace = places === undefined ? [] : [filterOf(windows.place, places)];
    return [[...filters(asked, undefined), ...byPlace, ...byKeeper]];
  }
  if (places !== undefined)
    return oneOf(windows.place, places).map((leg) => [
      leg,
      ...filters(asked, "place"),
      ...byKeeper,
    ]);
  if (keepers !== undefined)
    return oneOf(windows.keeper, keepers).map((leg) => [leg, ...filters(asked, "keeper")]);
  if (asked.site !== undefined) return [[eq(windows.site, asked.site), ...filters(asked, "site")]];
  if (asked.assetType !== undefined) return [[eq(windows.assetType, asked.assetType)]];
  return [[]];
}
