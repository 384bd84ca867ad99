import { sql } from "drizzle-orm";
import { expect, it } from "vitest";
import { recomputes, windows } from "../store/schema/due.ts";
import { endInterval } from "./end-interval.ts";
import { readBundle } from "./read-bundle.ts";
import { readDue } from "./read-due.ts";
import { readIntervals } from "./read-register.ts";
import { rebuild } from "./rebuild.ts";
import { drainRecomputes } from "./recompute.ts";
import { sealEntries } from "./seal-entries.ts";
import { setCalendar } from "./set-calendar.ts";
import { setInterval } from "./set-interval.ts";
import { GOOD } from "./testing/estate.ts";
import { ASSETS, dump, everyMonths, manyDoors, step } from "./testing/many-doors.ts";

it("a change over many assets waits in batches; readers keep the old dates until one switch", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids, signed, inspection, assets } = estate;
  const first = async () => (await readDue(ctx, { limit: 1 })).rows[0];
  await setInterval(ctx, session, everyMonths(estate, 3), ids.interval);
  expect(await ctx.store.db.select().from(recomputes)).toMatchObject([
    { kind: "intervals", done: 0, of: ASSETS },
  ]);
  expect(await first()).toMatchObject({ due: "2026-01-05", intervalTitle: "Half-yearly" });

  expect(await step(estate)).toBe(true);
  expect(await step(estate)).toBe(true);
  const [row] = await readIntervals(ctx);
  expect(row).toMatchObject({
    definition: { title: "Half-yearly" },
    progress: { done: 1000, of: ASSETS, definition: { title: "Every 3 months" } },
  });
  expect(await first()).toMatchObject({ due: "2026-01-05" });

  // What is sealed meanwhile counts in both, of an asset that is passed and of one to come.
  const [early = "", late = ""] = [assets[0], assets.at(-1)];
  const done = await Promise.all([early, late].map((id) => inspection(id, GOOD, "2026-02-01")));
  await sealEntries(
    ctx,
    session,
    done.map((one) => signed(one)),
  );
  const of = async (asset: string) =>
    (await readDue(ctx, { limit: 200, q: `D-${assets.indexOf(asset)}` })).rows.find(
      (one) => one.asset === asset,
    );
  expect(await of(early)).toMatchObject({ due: "2026-08-01" });

  const working = await readBundle(ctx, ids.site);
  await drainRecomputes(ctx);
  expect(await of(early)).toMatchObject({ due: "2026-05-01" });
  expect(await of(late)).toMatchObject({ due: "2026-05-01" });
  // Dates changed without an entry: a device that has read the site is told.
  const after = await readBundle(ctx, ids.site);
  expect(after?.cursor).toBe(working?.cursor);
  expect(after?.stamp).not.toBe(working?.stamp);
  expect(await first()).toMatchObject({ due: "2026-04-05", intervalTitle: "Every 3 months" });
  expect(await ctx.store.db.select().from(recomputes)).toEqual([]);

  const before = await dump(estate);
  expect(before).toHaveLength(ASSETS);
  await rebuild(ctx);
  expect(await dump(estate)).toEqual(before);
}, 60_000);

it("a second change overtakes the first, an ended interval leaves nothing, and no old row stays", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids } = estate;
  await setInterval(ctx, session, everyMonths(estate, 3), ids.interval);
  await step(estate);
  await setInterval(ctx, session, everyMonths(estate, 4), ids.interval);
  await drainRecomputes(ctx);
  expect((await readDue(ctx, { limit: 1 })).rows[0]).toMatchObject({ due: "2026-05-05" });
  const generations = await ctx.store.db
    .select({ generation: windows.generation, of: sql<number>`count(*)` })
    .from(windows)
    .groupBy(windows.generation);
  expect(generations.map(({ of }) => of)).toEqual([ASSETS]);

  await setInterval(ctx, session, everyMonths(estate, 5), ids.interval);
  await step(estate);
  await endInterval(ctx, session, ids.interval);
  expect((await readDue(ctx, {})).rows).toEqual([]);
  await drainRecomputes(ctx);
  expect(await ctx.store.db.select().from(windows)).toEqual([]);
}, 60_000);

it("whoever writes gets in between two batches", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids, signed, inspection, assets } = estate;
  await setInterval(ctx, session, everyMonths(estate, 3), ids.interval);
  const order: string[] = [];
  const entry = signed(await inspection(assets[0] ?? "", GOOD, "2026-02-01"));
  const working = (async () => {
    while (await step(estate, 100)) order.push("batch");
  })();
  await step(estate, 100);
  await sealEntries(ctx, session, [entry]);
  order.push("sealed");
  await working;
  expect(order.indexOf("sealed")).toBeLessThan(5);
  expect(order.filter((one) => one === "batch").length).toBeGreaterThan(15);
}, 60_000);

it("a calendar reaches every window of its site, in batches too", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids } = estate;
  await setInterval(
    ctx,
    session,
    { ...everyMonths(estate, 6), rule: { kind: "from-last-done", every: "P6M", first: "P4D" } },
    ids.interval,
  );
  await drainRecomputes(ctx);
  // 9 January 2026 is a Friday.
  expect((await readDue(ctx, { limit: 1 })).rows[0]).toMatchObject({ due: "2026-01-09" });
  await setCalendar(ctx, session, ids.site, { weekdays: [{ weekday: 5, reason: "Friday" }] });
  await drainRecomputes(ctx);
  expect((await readDue(ctx, { limit: 1 })).rows[0]).toMatchObject({ due: "2026-01-08" });
  const before = await dump(estate);
  await rebuild(ctx);
  expect(await dump(estate)).toEqual(before);
}, 60_000);

it("a change over another than was read is refused, waiting or in force, and changes nothing", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids } = estate;
  const [before] = await readIntervals(ctx);
  const over = before?.definition;
  if (over === undefined) throw new Error("no interval");
  await setInterval(ctx, session, { ...everyMonths(estate, 2), over }, ids.interval);
  const late = setInterval(ctx, session, { ...everyMonths(estate, 4), over }, ids.interval);
  await expect(late).rejects.toMatchObject({ code: "interval-changed-meanwhile" });
  await drainRecomputes(ctx);
  const again = setInterval(ctx, session, { ...everyMonths(estate, 4), over }, ids.interval);
  await expect(again).rejects.toMatchObject({ code: "interval-changed-meanwhile" });
  const [now] = await readIntervals(ctx);
  expect(now?.definition.title).toBe("Every 2 months");
  const read = now?.definition;
  await setInterval(ctx, session, { ...everyMonths(estate, 4), over: read }, ids.interval);
}, 60_000);
