import type { AssetTypeRow, IntervalRow, PersonRow, PlaceRow } from "@roundbook/schemas";
import { asc, eq, type SQL } from "drizzle-orm";
import { keepers, times } from "../store/schema/calendars.ts";
import { contents } from "../store/schema/log.ts";
import { assetTypes, devices, intervals, people, places } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { readProgress } from "./recompute.ts";

export async function readPlaces(ctx: Context, site?: string): Promise<PlaceRow[]> {
  return ctx.store.db
    .select({
      id: places.id,
      parent: places.parent,
      level: places.level,
      code: places.code,
      name: places.name,
      zone: places.zone,
      order: places.order,
      keeper: keepers.keeper,
    })
    .from(places)
    .leftJoin(keepers, eq(keepers.place, places.id))
    .where(site === undefined ? undefined : eq(places.site, site))
    .orderBy(asc(places.site), asc(places.order), asc(places.seq));
}

async function selectPeople(ctx: Context, where?: SQL): Promise<PersonRow[]> {
  const rows = await ctx.store.db
    .select({ id: people.id, role: people.role, name: contents.text, minutes: times.minutes })
    .from(people)
    .leftJoin(times, eq(times.person, people.id))
    .leftJoin(contents, eq(contents.commit, people.nameCommit))
    .where(where)
    .orderBy(asc(people.seq));
  return rows.map(({ id, role, name, minutes }) => ({
    id,
    role,
    name: name ?? "",
    ...(minutes === null ? {} : { minutesAWeek: minutes }),
  }));
}

export const readPeople = (ctx: Context): Promise<PersonRow[]> => selectPeople(ctx);

export async function readPerson(ctx: Context, id: string): Promise<PersonRow | null> {
  const [row] = await selectPeople(ctx, eq(people.id, id));
  return row ?? null;
}

export async function readAssetTypes(ctx: Context): Promise<AssetTypeRow[]> {
  const rows = await ctx.store.db.select().from(assetTypes).orderBy(asc(assetTypes.title));
  return rows.map(({ name, version, title, particulars, checklists }) => ({
    assetType: name,
    version,
    title,
    particulars,
    checklists,
  }));
}

/** Each as its dates are by now, or as it will be where they are worked out for the first time. */
export async function readIntervals(ctx: Context): Promise<IntervalRow[]> {
  const progress = await readProgress(ctx);
  const rows = await ctx.store.db
    .select({ id: intervals.id, definition: intervals.definition })
    .from(intervals)
    .orderBy(asc(intervals.assetType), asc(intervals.title), asc(intervals.id));
  return rows.map((row) => {
    const under = progress.get(row.id);
    return under === undefined ? row : { ...row, progress: under };
  });
}

export interface DeviceRow {
  readonly id: string;
  readonly person: string;
  readonly key: string;
  readonly label: string;
}

export async function readDevice(ctx: Context, id: string): Promise<DeviceRow | null> {
  const [row] = await ctx.store.db.select().from(devices).where(eq(devices.id, id));
  return row ? { id: row.id, person: row.person, key: row.key, label: row.label } : null;
}
