import { getTableName, sql } from "drizzle-orm";
import { expect, it } from "vitest";
import { PROJECTIONS } from "../store/projections/tables.ts";
import { appendEntries } from "./append-entries.ts";
import { readAsset } from "./read-assets.ts";
import { readBundle, readChanges } from "./read-bundle.ts";
import { readDefects } from "./read-defects.ts";
import { readHistory } from "./read-history.ts";
import { rebuild } from "./rebuild.ts";
import { sealEntries } from "./seal-entries.ts";
import { BAD, type TestEstate, testEstate } from "./testing/estate.ts";

/** Beside Ferry Hall a second site with a room, and somebody who does its rounds. */
async function twoSites() {
  const estate = await testEstate();
  const { ctx, ids, newId, signed, session } = estate;
  const [yard, shed, asset] = [newId(), newId(), newId()];
  const said = { asset: null, author: ids.person, civilDate: "2026-10-01", happenedAt: null };
  const place = { code: "2", name: "Yard", zone: "Europe/London" };
  await appendEntries(ctx, {
    entries: [
      {
        ...said,
        kind: "place-added",
        body: { place: yard, parent: null, level: "site", ...place },
      },
      {
        ...said,
        kind: "place-added",
        body: { place: shed, parent: yard, level: "room", code: "3", name: "Shed" },
      },
      { ...said, kind: "keeper-set", body: { place: yard, keeper: ids.person } },
    ],
  });
  await sealEntries(ctx, session, [signed(estate.registered(asset, "7", "2026-01-05"))]);
  const seal = async (...entries: Parameters<TestEstate["signed"]>[0][]) =>
    (
      await sealEntries(
        ctx,
        session,
        entries.map((one) => signed(one)),
      )
    ).map(({ outcome }) => outcome);
  const moved = (to: string, day: string) => estate.entry("moved", asset, { place: to }, day);
  return { ...estate, yard, shed, asset, seal, moved };
}

const dump = async ({ ctx }: Pick<TestEstate, "ctx">) => {
  const tables: Record<string, string[]> = {};
  for (const table of PROJECTIONS) {
    const name = getTableName(table);
    const rows = await ctx.store.db.all(sql.raw(`select * from "${name}"`));
    const plain = rows.map((row) => (name === "windows" ? { ...(row as object), id: 0 } : row));
    tables[name] = plain.map((row) => JSON.stringify(row)).sort();
  }
  return tables;
};

it("what is moved stands at its new place with its dates, its defects and whoever does the rounds there", async () => {
  const estate = await twoSites();
  const { ctx, asset, seal, moved, shed, yard, ids, inspection } = estate;
  expect(await seal(await inspection(asset, BAD, "2026-09-01"))).toEqual(["sealed"]);
  expect(await seal(moved(shed, "2026-10-12"))).toEqual(["sealed"]);
  const page = await readAsset(ctx, asset);
  expect(page?.asset).toMatchObject({ site: yard, place: shed, path: ["Yard", "Shed"] });
  expect(page?.due).toMatchObject([{ site: yard, place: shed, keeper: ids.person }]);
  const there = await readBundle(ctx, yard);
  expect([there?.assets.length, there?.due.length, there?.defects.length]).toEqual([1, 1, 1]);
  const left = await readBundle(ctx, ids.site);
  expect([left?.assets.length, left?.due.length, left?.defects.length]).toEqual([0, 0, 0]);
  const { rows } = await readHistory(ctx, asset);
  expect(rows.map(({ entry }) => entry.kind)).toEqual(["moved", "inspection", "registered"]);
});

it("a move that happened earlier and arrives late does not undo a later one", async () => {
  const { ctx, asset, seal, moved, shed, yard, ids } = await twoSites();
  await seal(moved(shed, "2026-10-12"));
  await seal(moved(ids.site, "2026-05-04"));
  expect((await readAsset(ctx, asset))?.asset.place).toBe(shed);
  await seal(moved(yard, "2026-10-13"));
  expect((await readAsset(ctx, asset))?.asset.place).toBe(yard);
});

it("defects that were closed before a move go with it, and rows derived again are the same", async () => {
  const estate = await twoSites();
  const { ctx, asset, seal, moved, shed, yard, ids, inspection, entry } = estate;
  const bad = await inspection(asset, BAD, "2026-03-02");
  await seal(bad);
  const step = (name: string, day: string) =>
    entry("defect-step", asset, { defect: `${bad.id}:closes`, step: name }, day);
  await seal(step("repaired", "2026-03-03"), step("verified", "2026-03-04"));
  await seal(moved(shed, "2026-04-06"), await inspection(asset, BAD, "2026-05-04"));
  await seal(moved(ids.site, "2026-02-02"), moved(yard, "2026-06-01"));
  const { rows } = await readDefects(ctx, {});
  expect(rows.map(({ site }) => site)).toEqual([yard, yard]);
  const before = await dump(estate);
  await rebuild(ctx);
  expect(await dump(estate)).toEqual(before);
});

it("a device of either site hears of a move among the changes since it read its site", async () => {
  const { ctx, asset, seal, moved, shed, yard, ids } = await twoSites();
  const from = await readBundle(ctx, ids.site);
  const to = await readBundle(ctx, yard);
  await seal(moved(shed, "2026-10-12"));
  if (from === null || to === null) throw new Error("a site is missing");
  expect((await readChanges(ctx, ids.site, from))?.gone).toEqual([asset]);
  expect((await readChanges(ctx, yard, to))?.assets.map(({ id }) => id)).toEqual([asset]);
});

it("a place that is not known yet is asked for again, and an asset that is none is too", async () => {
  const { seal, moved, newId, entry, shed } = await twoSites();
  expect(await seal(moved(newId(), "2026-10-12"))).toEqual(["retry-later"]);
  expect(await seal(entry("moved", newId(), { place: shed }))).toEqual(["retry-later"]);
});

it("a picture of the asset itself is named by its hash and shown with the asset", async () => {
  const { ctx, seal, newId, entry, ids } = await twoSites();
  const photo = "ab".repeat(32);
  const body = { number: "8", assetType: "door", description: "Door", place: ids.site };
  const [id, plain] = [newId(), newId()];
  const registered = (asset: string, more: object) =>
    entry("registered", asset, { ...body, particulars: {}, ...more });
  expect(await seal(registered(id, { photo }), registered(plain, {}))).toEqual([
    "sealed",
    "sealed",
  ]);
  expect((await readAsset(ctx, id))?.asset.photo).toBe(photo);
  expect((await readAsset(ctx, plain))?.asset).not.toHaveProperty("photo");
  expect(await seal(registered(newId(), { photo: "a picture" }))).toEqual(["refused"]);
});
