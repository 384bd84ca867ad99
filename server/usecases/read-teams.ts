import type { CalendarRow, TeamRow } from "@roundbook/schemas";
import { asc } from "drizzle-orm";
import { calendars, holidays, keepers, teams, times } from "../store/schema/calendars.ts";
import type { Context } from "./context.ts";

export async function readTeams(ctx: Context): Promise<TeamRow[]> {
  const rows = await ctx.store.db.select().from(teams).orderBy(asc(teams.name), asc(teams.id));
  return rows.map(({ id, name, members }) => ({ id, name, members }));
}

/** A person's own id and those of the teams they are in; of a team itself alone. */
export async function keeperIds(ctx: Context, keeper: string): Promise<string[]> {
  const own = (await readTeams(ctx)).filter(({ members }) => members.includes(keeper));
  return [keeper, ...own.map(({ id }) => id)];
}

/** By place, where one is named. */
export async function readKeeperOf(ctx: Context): Promise<ReadonlyMap<string, string | null>> {
  return new Map((await ctx.store.db.select().from(keepers)).map((row) => [row.place, row.keeper]));
}

/** Minutes a week for rounds, by person. */
export async function readTimes(ctx: Context): Promise<ReadonlyMap<string, number>> {
  return new Map((await ctx.store.db.select().from(times)).map((row) => [row.person, row.minutes]));
}

export async function readCalendarRows(ctx: Context): Promise<CalendarRow[]> {
  const { db } = ctx.store;
  const years = await db.select().from(holidays).orderBy(asc(holidays.region), asc(holidays.year));
  return (await db.select().from(calendars).orderBy(asc(calendars.site))).map(
    ({ site, calendar }) => ({
      site,
      calendar,
      holidays: years
        .filter(({ region }) => region === calendar.region)
        .flatMap((year) => year.holidays),
    }),
  );
}
