import { sql } from "drizzle-orm";
import { expect, it } from "vitest";
import { tempStore } from "../store/testing/temp-store.ts";
import { appendEntries } from "./append-entries.ts";
import { createContext } from "./context.ts";
import { readDue } from "./read-due.ts";
import { readIntervals } from "./read-register.ts";
import { rebuild } from "./rebuild.ts";
import { drainRecomputes } from "./recompute.ts";
import { setInterval } from "./set-interval.ts";
import { setKeeper } from "./set-keeper.ts";
import { ASSETS, dump, everyMonths, manyDoors, step } from "./testing/many-doors.ts";

it("a server that stopped between two batches goes on where it stopped", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids, clock, newId } = estate;
  await setInterval(ctx, session, everyMonths(estate, 3), ids.interval);
  await step(estate);
  const [main] = await ctx.store.db.all<{ file: string }>(
    sql`select file from pragma_database_list where name = 'main'`,
  );
  await ctx.store.close();

  const store = await tempStore(`file:${main?.file}`);
  const again = createContext({ store, clock: () => clock.now, newId });
  const [row] = await readIntervals(again);
  expect(row).toMatchObject({ progress: { done: 500, of: ASSETS } });
  expect((await readDue(again, { limit: 1 })).rows[0]).toMatchObject({ due: "2026-01-05" });
  await drainRecomputes(again);
  expect((await readDue(again, { limit: 1 })).rows[0]).toMatchObject({ due: "2026-04-05" });
  const before = await dump({ ctx: again });
  expect(before).toHaveLength(ASSETS);
  await rebuild(again);
  expect(await dump({ ctx: again })).toEqual(before);
}, 60_000);

it("an interval that goes over to another type leaves no window of the first", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids, ref } = estate;
  await appendEntries(ctx, {
    entries: [
      {
        kind: "asset-type-issued",
        asset: null,
        author: ids.person,
        civilDate: "2026-10-01",
        happenedAt: null,
        body: {
          assetType: "hatch",
          version: 1,
          title: "Hatch",
          particulars: {},
          checklists: [ref.id],
        },
      },
    ],
  });
  const definition = { ...everyMonths(estate, 3), assetType: "hatch" };
  await setInterval(ctx, session, definition, ids.interval);
  await drainRecomputes(ctx);
  expect(await dump(estate)).toEqual([]);
  await setInterval(ctx, session, everyMonths(estate, 3), ids.interval);
  expect((await readDue(ctx, {})).rows).toEqual([]);
  await drainRecomputes(ctx);
  const before = await dump(estate);
  expect(before).toHaveLength(ASSETS);
  await rebuild(ctx);
  expect(await dump(estate)).toEqual(before);
}, 60_000);

it("whoever keeps a place is named in the windows of all that stands there", async () => {
  const estate = await manyDoors();
  const { ctx, session, ids } = estate;
  await setKeeper(ctx, session, ids.site, ids.person);
  await drainRecomputes(ctx);
  const before = await dump(estate);
  expect(before.filter((row) => row.includes(`"keeper":"${ids.person}"`))).toHaveLength(ASSETS);
  await rebuild(ctx);
  expect(await dump(estate)).toEqual(before);
}, 60_000);
