import { type EntryOf, expectedMinutes } from "@roundbook/schemas";
import { dayOf, type Sealed } from "../append-log.ts";
import type { intervals } from "../schema/register.ts";
import { type Batch, issueKey } from "./batch.ts";

type At<K extends Sealed["entry"]["kind"]> = { readonly entry: EntryOf<K>; readonly seq: number };

export function applyPerson(batch: Batch, { entry, seq }: At<"person-added">): void {
  const { person, role, name } = entry.body;
  batch.people.put({ id: person, role, nameCommit: name.commit, seq });
}

/** The first key stands: another would let a device speak for whoever enrolled before. */
export function applyDevice(batch: Batch, { entry, seq }: At<"device-enrolled">): void {
  const { device, person, key, label = "" } = entry.body;
  if (!batch.devices.has(device)) batch.devices.put({ id: device, person, key, label, seq });
}

/** A place keeps its parent and so its site; whatever lies in a site shares its zone. */
export function applyPlace(batch: Batch, { entry, seq }: At<"place-added">): void {
  const { place, level, code, name, order = 0 } = entry.body;
  const known = batch.places.get(place);
  const parent = known === undefined ? (entry.body.parent ?? null) : known.parent;
  const above = parent === null ? undefined : batch.places.get(parent);
  batch.places.put({
    id: place,
    parent,
    site: known?.site ?? above?.site ?? place,
    level,
    code,
    name,
    zone: above?.zone ?? entry.body.zone ?? known?.zone ?? "UTC",
    order,
    seq,
  });
}

export function applyAssetType(batch: Batch, { entry, seq }: At<"asset-type-issued">): void {
  const { assetType, version, title, particulars, checklists } = entry.body;
  const known = batch.assetTypes.get(assetType);
  if (known !== undefined && known.version > version) return;
  batch.assetTypes.put({ name: assetType, version, title, particulars, checklists, seq });
}

export function applyCalendar(batch: Batch, { entry, seq }: At<"calendar-set">): void {
  const { site, calendar } = entry.body;
  batch.calendars.put({ site, calendar, seq });
  batch.dueSites.set(site, seq);
}

export function applyHolidays(batch: Batch, { entry, seq }: At<"holidays-set">): void {
  const { region, year, holidays } = entry.body;
  batch.holidays.put({ region, year, holidays, seq });
  batch.dueRegions.set(region, seq);
}

export function applyTeam(batch: Batch, { entry, seq }: At<"team-set">): void {
  const { team, name, members } = entry.body;
  batch.teams.put({ id: team, name, members, seq });
}

export function applyKeeper(batch: Batch, { entry, seq }: At<"keeper-set">): void {
  const { place, keeper } = entry.body;
  batch.keepers.put({ place, keeper, seq });
  const site = batch.places.get(place)?.site;
  if (site !== undefined) batch.dueSites.set(site, seq);
}

export function applyTime(batch: Batch, { entry, seq }: At<"time-set">): void {
  const { person, minutes } = entry.body;
  batch.times.put({ person, minutes, seq });
}

export function applyIssued(batch: Batch, { entry, seq }: At<"checklist-issued">): void {
  const { checklist, document } = entry.body;
  const { id, issue, hash } = checklist;
  if (batch.checklists.has(issueKey(id, issue))) return;
  const title = "title" in document && typeof document.title === "string" ? document.title : "";
  const issuedOn = dayOf(entry.civilDate);
  const minutes = expectedMinutes(document as never);
  batch.checklists.put({ id, issue, hash, title, withdrawn: false, issuedOn, minutes, seq });
  batch.checklistDocs.put({ hash, document: document as never });
  // Which check asks all that another asks may be otherwise now.
  for (const row of [...batch.intervals.values()])
    if (asksFor(batch, row, id)) workOutCovered(batch, coveredOf(row), seq);
}

export function applyWithdrawn(batch: Batch, { entry }: At<"checklist-withdrawn">): void {
  const { id, issue } = entry.body.checklist;
  const row = batch.checklists.get(issueKey(id, issue));
  if (row !== undefined) batch.checklists.put({ ...row, withdrawn: true });
}

/** The shorter checks that a change of an interval may cover or cover no more. */
const coveredOf = (row: typeof intervals.$inferSelect | undefined): readonly string[] =>
  row === undefined
    ? []
    : [...(row.definition.covers ?? []), ...(row.pending?.definition.covers ?? [])];

/** Whether an interval covers others and it, or one of them, is of a checklist. */
const asksFor = (batch: Batch, row: typeof intervals.$inferSelect, checklist: string): boolean => {
  const shorter = coveredOf(row);
  return (
    shorter.length > 0 &&
    [row.id, ...shorter].some((id) => batch.intervals.get(id)?.checklist === checklist)
  );
};

/** Windows of the interval, and of those it covers, are worked out anew as one generation. */
export function applyInterval(batch: Batch, { entry, seq }: At<"interval-set">): void {
  const { interval, definition } = entry.body;
  const { assetType, checklist, title } = definition;
  const before = batch.intervals.get(interval);
  batch.endedAt.delete(interval);
  batch.intervals.put({
    id: interval,
    assetType,
    checklist,
    title: before?.title ?? title,
    definition: before?.definition ?? definition,
    generation: before?.generation ?? 0,
    pending: { definition, generation: seq },
    seq,
  });
  batch.dueIntervals.set(interval, seq);
  workOutCovered(batch, [...coveredOf(before), ...(definition.covers ?? [])], seq);
}

function workOutCovered(batch: Batch, covered: readonly string[], seq: number): void {
  for (const id of covered) {
    const row = batch.intervals.get(id);
    if (row === undefined || batch.dueIntervals.get(id) === seq) continue;
    const definition = row.pending?.definition ?? row.definition;
    batch.intervals.put({ ...row, pending: { definition, generation: seq } });
    batch.dueIntervals.set(id, seq);
    workOutCovered(batch, coveredOf(row), seq);
  }
}

export function applyIntervalEnd(batch: Batch, { entry, seq }: At<"interval-ended">): void {
  const row = batch.intervals.get(entry.body.interval);
  if (row === undefined) return;
  batch.endedAt.set(row.id, seq);
  batch.dueIntervals.delete(row.id);
  workOutCovered(batch, coveredOf(row), seq);
}
