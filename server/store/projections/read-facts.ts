import {
  type Calendar,
  type CivilDate,
  calendarOf,
  type DoneRecord,
  type DueEvent,
  type MeterReading,
  type RuleOverride,
} from "@roundbook/schemas";
import { asc } from "drizzle-orm";
import { among } from "../among.ts";
import type { Db } from "../db.ts";
import { calendars, holidays, keepers } from "../schema/calendars.ts";
import { events, overrides, results, statuses } from "../schema/due.ts";
import { places } from "../schema/register.ts";
import { overrideKey } from "./batch.ts";

type ResultRow = typeof results.$inferSelect;

/** All that windows of some assets follow from, beside assets and intervals. */
export interface Known {
  /** By asset and checklist. */
  done(asset: string, checklist: string): readonly DoneRecord[];
  meter(asset: string, checklist: string, point: string): readonly MeterReading[];
  events(asset: string): readonly DueEvent[];
  override(asset: string, interval: string): RuleOverride | undefined;
  /** Of the issue that an inspection was done by. */
  hashOf(entry: string): string | undefined;
}

const push = <T>(lists: Map<string, T[]>, key: string, one: T): void => {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [one]);
  else list.push(one);
};

const recordOf = ({ entry, on, at, counts, next, broughtForward }: ResultRow): DoneRecord => ({
  entry,
  on: on as CivilDate,
  at,
  counts,
  next,
  broughtForward,
});

type StatusRow = typeof statuses.$inferSelect;
const inOrder = (a: StatusRow, b: StatusRow): number =>
  a.on - b.on || (a.at ?? -1) - (b.at ?? -1) || (a.entry < b.entry ? -1 : 1);

/** Where an asset came back into service: its statuses in order of time. */
function returns(rows: readonly StatusRow[]): DueEvent[] {
  let away = false;
  const found: DueEvent[] = [];
  for (const { entry, status, on, at } of [...rows].sort(inOrder)) {
    if (status === "in-service" && away)
      found.push({ kind: "returned", entry, on: on as CivilDate, at });
    away = status !== "in-service";
  }
  return found;
}

async function readEvents(tx: Db, ids: readonly string[]): Promise<Map<string, DueEvent[]>> {
  const all = new Map<string, DueEvent[]>();
  for (const row of await tx.select().from(events).where(among(events.asset, ids))) {
    const { asset, kind, entry, on, at } = row;
    push(all, asset, { kind, entry, on: on as CivilDate, at });
  }
  const given = new Map<string, StatusRow[]>();
  for (const row of await tx.select().from(statuses).where(among(statuses.asset, ids)))
    push(given, row.asset, row);
  for (const [asset, rows] of given) for (const one of returns(rows)) push(all, asset, one);
  return all;
}

/** `metered`: checklists whose readings some rule counts. */
export async function readKnown(
  tx: Db,
  ids: readonly string[],
  metered: ReadonlySet<string>,
): Promise<Known> {
  const own = new Map<string, RuleOverride>();
  /** Whose own rule goes by use. */
  const byUse = new Set<string>();
  for (const row of await tx.select().from(overrides).where(among(overrides.asset, ids))) {
    const { asset, interval, rule, reason, until } = row;
    if (rule === null) continue;
    own.set(overrideKey(asset, interval), { rule, reason, until: until as CivilDate | null });
    if (rule.kind === "on-usage") byUse.add(asset);
  }
  const done = new Map<string, DoneRecord[]>();
  const metering = new Map<string, ResultRow[]>();
  const hashes = new Map<string, string>();
  for (const row of await tx.select().from(results).where(among(results.asset, ids))) {
    const key = `${row.asset} ${row.checklist}`;
    push(done, key, recordOf(row));
    if (row.hash !== null) hashes.set(row.entry, row.hash);
    if (metered.has(row.checklist) || byUse.has(row.asset)) push(metering, key, row);
  }
  const happened = await readEvents(tx, ids);
  return {
    done: (asset, checklist) => done.get(`${asset} ${checklist}`) ?? [],
    meter: (asset, checklist, point) =>
      (metering.get(`${asset} ${checklist}`) ?? []).flatMap(({ entry, on, at, readings }) => {
        const reading = readings[point];
        // "More than" is no figure that a meter stood at.
        if (reading === undefined || reading.comparator !== undefined) return [];
        const { value, unit } = reading;
        return { entry, on: on as CivilDate, at, value, unit };
      }),
    hashOf: (entry) => hashes.get(entry),
    events: (asset) => happened.get(asset) ?? [],
    override: (asset, interval) => own.get(overrideKey(asset, interval)),
  };
}

/** The calendars of sites, each made once; none for a site without one. */
export async function readCalendars(tx: Db): Promise<(site: string) => Calendar | undefined> {
  const days = new Map<string, (typeof holidays.$inferSelect)["holidays"][number][]>();
  const years = await tx.select().from(holidays).orderBy(asc(holidays.region), asc(holidays.year));
  for (const { region, holidays: list } of years) for (const one of list) push(days, region, one);
  const made = new Map<string, Calendar>();
  for (const { site, calendar } of await tx.select().from(calendars)) {
    const { region, ...own } = calendar;
    const list = region === undefined ? [] : (days.get(region) ?? []);
    made.set(site, calendarOf({ ...own, holidays: list }));
  }
  return (site) => made.get(site);
}

/** Who does the rounds of a place: its own keeper, or that of the nearest place it lies in. */
export async function readKeepers(tx: Db): Promise<(place: string) => string | null> {
  const own = new Map((await tx.select().from(keepers)).map((row) => [row.place, row.keeper]));
  if (own.size === 0) return () => null;
  const parents = new Map(
    (await tx.select({ id: places.id, parent: places.parent }).from(places)).map((row) => [
      row.id,
      row.parent,
    ]),
  );
  const found = new Map<string, string | null>();
  const keeperOf = (place: string): string | null => {
    const known = found.get(place);
    if (known !== undefined) return known;
    const parent = parents.get(place) ?? null;
    const keeper = own.get(place) ?? (parent === null ? null : keeperOf(parent));
    found.set(place, keeper);
    return keeper;
  };
  return keeperOf;
}

/** Sites whose calendars name a region. */
export async function sitesOfRegion(tx: Db, region: string): Promise<string[]> {
  const rows = await tx.select().from(calendars);
  return rows.filter(({ calendar }) => calendar.region === region).map(({ site }) => site);
}
