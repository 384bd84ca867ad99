import { and, asc, eq, gt, inArray, lt, type SQL, sql } from "drizzle-orm";
import type { Db } from "../db.ts";
import { covered, recomputes, windows } from "../schema/due.ts";
import { assets, intervals } from "../schema/register.ts";
import type { Batch } from "./batch.ts";
import { windowMaker } from "./compute-windows.ts";
import { sitesOfRegion } from "./read-facts.ts";
import { type Intervals, readIntervalRows, type Variant } from "./variants.ts";

/** Assets whose windows one transaction works out: what it blocks others for. */
const ASSETS_AT_ONCE = 2000;
const ROWS_AT_ONCE = 5000;

type Job = typeof recomputes.$inferSelect;

const COLUMNS = {
  id: assets.id,
  assetType: assets.assetType,
  site: assets.site,
  place: assets.place,
  status: assets.status,
  registeredOn: assets.registeredOn,
  particulars: assets.particulars,
};

const pendingOf = (rows: Intervals, generation: number): Intervals =>
  rows.filter((row) => row.pending?.generation === generation);

/** Whose windows a job works out; undefined when a later change has overtaken it. */
function scopeOf(job: Job, rows: Intervals): SQL | undefined {
  if (job.kind === "sites") return inArray(assets.site, [...job.subjects]);
  const waiting = pendingOf(rows, job.id);
  if (waiting.length === 0) return undefined;
  const types = new Set(waiting.flatMap(({ pending }) => pending?.definition.assetType ?? []));
  return inArray(assets.assetType, [...types]);
}

/** The new generation becomes the one that readers see: pointers move, and nothing else. */
async function switchTo(tx: Db, rows: Intervals, generation: number): Promise<void> {
  for (const { id, pending } of pendingOf(rows, generation)) {
    if (pending === null) continue;
    const { definition } = pending;
    const { assetType, checklist, title } = definition;
    await tx
      .update(intervals)
      .set({ definition, assetType, checklist, title, generation, pending: null })
      .where(eq(intervals.id, id));
  }
}

/** Works out the next assets of a job. Gives whether there are more. */
async function workOn(tx: Db, job: Job, limit: number): Promise<boolean> {
  const rows = await readIntervalRows(tx);
  const scope = scopeOf(job, rows);
  if (scope === undefined) {
    await tx.delete(recomputes).where(eq(recomputes.id, job.id));
    return false;
  }
  const some = await tx
    .select(COLUMNS)
    .from(assets)
    .where(and(scope, gt(assets.id, job.last)))
    .orderBy(asc(assets.id))
    .limit(limit);
  const ours = ({ generation }: Variant) => generation === job.id;
  const make = await windowMaker(tx, job.kind === "intervals" ? ours : undefined);
  await make(some);
  const last = some.at(-1)?.id;
  if (last !== undefined && some.length === limit) {
    const done = job.done + some.length;
    await tx.update(recomputes).set({ last, done }).where(eq(recomputes.id, job.id));
    return true;
  }
  if (job.kind === "intervals") {
    await switchTo(tx, rows, job.id);
    await tx
      .update(recomputes)
      .set({ kind: "sweep", last: "", done: job.of })
      .where(eq(recomputes.id, job.id));
    return true;
  }
  await tx.delete(recomputes).where(eq(recomputes.id, job.id));
  return false;
}

/** Removes rows of generations before the one that is seen, and of intervals that ended. */
async function sweep(tx: Db, job: Job, limit: number): Promise<boolean> {
  const seen = new Map((await readIntervalRows(tx)).map((row) => [row.id, row.generation]));
  for (const interval of job.subjects) {
    const generation = seen.get(interval);
    const old = await tx
      .select({ id: windows.id })
      .from(windows)
      .where(
        and(
          eq(windows.interval, interval),
          generation === undefined ? undefined : lt(windows.generation, generation),
        ),
      )
      .limit(limit);
    if (old.length > 0) {
      const ids = JSON.stringify(old.map(({ id }) => id));
      await tx.delete(windows).where(sql`${windows.id} in (select value from json_each(${ids}))`);
    }
    if (old.length === limit) return true;
    const stale = generation === undefined ? undefined : lt(covered.generation, generation);
    await tx.delete(covered).where(and(eq(covered.interval, interval), stale));
  }
  await tx.delete(recomputes).where(eq(recomputes.id, job.id));
  return false;
}

/** One batch of what waits in the background, the oldest first. Gives whether any work is left. */
export async function workOutNext(
  tx: Db,
  limits = { assets: ASSETS_AT_ONCE, rows: ROWS_AT_ONCE },
): Promise<boolean> {
  const [job] = await tx.select().from(recomputes).orderBy(asc(recomputes.id)).limit(1);
  if (job === undefined) return false;
  if (job.kind === "sweep") await sweep(tx, job, limits.rows);
  else await workOn(tx, job, limits.assets);
  const [next] = await tx.select({ id: recomputes.id }).from(recomputes).limit(1);
  return next !== undefined;
}

async function begin(
  tx: Db,
  job: Pick<Job, "id" | "kind" | "subjects">,
  limit: number,
): Promise<void> {
  const begun: Job = { ...job, last: "", done: 0, of: 0 };
  const scope = job.kind === "sweep" ? undefined : scopeOf(begun, await readIntervalRows(tx));
  if (job.kind !== "sweep" && scope === undefined) return;
  const [counted] =
    scope === undefined
      ? []
      : await tx.select({ of: sql<number>`count(*)` }).from(assets).where(scope);
  await tx.insert(recomputes).values({ ...begun, of: counted?.of ?? 0 });
  // What is soon done is done at once: its entry and its windows are one.
  if ((counted?.of ?? 0) > limit) return;
  while ((await isWaiting(tx, job.id)) && (await once(tx, job.id, limit)));
}

const isWaiting = async (tx: Db, id: number): Promise<boolean> =>
  (await tx.select({ id: recomputes.id }).from(recomputes).where(eq(recomputes.id, id))).length > 0;

async function once(tx: Db, id: number, limit: number): Promise<boolean> {
  const [job] = await tx.select().from(recomputes).where(eq(recomputes.id, id));
  if (job === undefined) return false;
  return job.kind === "sweep" ? sweep(tx, job, ROWS_AT_ONCE) : workOn(tx, job, limit);
}

/** Begins what the entries of a batch ask for; what takes one transaction is done in theirs. */
export async function workOutBatch(tx: Db, batch: Batch, limit = ASSETS_AT_ONCE): Promise<void> {
  const byEntry = new Map<number, string[]>();
  for (const [interval, seq] of batch.dueIntervals)
    byEntry.set(seq, [...(byEntry.get(seq) ?? []), interval]);
  const ended = [...batch.endedAt].filter(([interval, seq]) => {
    const together = byEntry.get(seq);
    together?.push(interval);
    return together === undefined;
  });
  for (const [id, subjects] of byEntry) await begin(tx, { id, kind: "intervals", subjects }, limit);

  const sites = new Map<number, string[]>();
  for (const [site, seq] of batch.dueSites) sites.set(seq, [...(sites.get(seq) ?? []), site]);
  for (const [region, seq] of batch.dueRegions) {
    const own = await sitesOfRegion(tx, region);
    if (own.length > 0) sites.set(seq, [...(sites.get(seq) ?? []), ...own]);
  }
  for (const [id, subjects] of sites) await begin(tx, { id, kind: "sites", subjects }, limit);

  for (const [interval, id] of ended)
    await begin(tx, { id, kind: "sweep", subjects: [interval] }, limit);
}

/** Every interval as it was last said, at once: for whoever computes all windows afterwards. */
export async function settleIntervals(tx: Db): Promise<void> {
  const rows = await readIntervalRows(tx);
  for (const { pending } of rows)
    if (pending !== null) await switchTo(tx, rows, pending.generation);
}

/** All windows of all assets, in batches: memory stays flat. */
export async function computeAllWindows(tx: Db): Promise<void> {
  const make = await windowMaker(tx);
  for (let last = ""; ; ) {
    const some = await tx
      .select(COLUMNS)
      .from(assets)
      .where(gt(assets.id, last))
      .orderBy(asc(assets.id))
      .limit(ASSETS_AT_ONCE);
    await make(some);
    const final = some.at(-1);
    if (final === undefined || some.length < ASSETS_AT_ONCE) return;
    last = final.id;
  }
}
