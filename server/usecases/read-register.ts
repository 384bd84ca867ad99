import type { AssetTypeRow, IntervalRow, PersonRow, PlaceRow } from "@roundbook/schemas";
import { asc, eq, type SQL } from "drizzle-orm";
import { contents } from "../store/schema/log.ts";
import { assetTypes, devices, intervals, people, places } from "../store/schema/register.ts";
import type { Context } from "./context.ts";

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
    })
    .from(places)
    .where(site === undefined ? undefined : eq(places.site, site))
    .orderBy(asc(places.site), asc(places.order), asc(places.seq));
}

async function selectPeople(ctx: Context, where?: SQL): Promise<PersonRow[]> {
  const rows = await ctx.store.db
    .select({ id: people.id, role: people.role, name: contents.text })
    .from(people)
    .leftJoin(contents, eq(contents.commit, people.nameCommit))
    .where(where)
    .orderBy(asc(people.seq));
  return rows.map(({ id, role, name }) => ({ id, role, name: name ?? "" }));
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

export async function readIntervals(ctx: Context): Promise<IntervalRow[]> {
  return ctx.store.db
    .select({ id: intervals.id, definition: intervals.definition })
    .from(intervals)
    .orderBy(asc(intervals.assetType), asc(intervals.title), asc(intervals.id));
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
