import {
  appendLeaf,
  EMPTY_FRONTIER,
  type Entry,
  type Frontier,
  hashLeaf,
  leafBytes,
  type SignedEntry,
  toHex,
} from "@roundbook/schemas";
import { getTableName, sql } from "drizzle-orm";
import { expect, it } from "vitest";
import { readLogState } from "../store/append-log.ts";
import { PROJECTIONS } from "../store/projections/tables.ts";
import { sha256 } from "../store/sha256.ts";
import { appendEntries } from "./append-entries.ts";
import type { Context } from "./context.ts";
import { readDefects } from "./read-defects.ts";
import { readLog } from "./read-history.ts";
import { rebuild } from "./rebuild.ts";
import { sealEntries } from "./seal-entries.ts";
import { BAD, GOOD, type TestEstate, testEstate } from "./testing/estate.ts";
import { outletEstate, SAMPLED } from "./testing/outlet.ts";

async function dump(ctx: Context): Promise<Record<string, string[]>> {
  const tables: Record<string, string[]> = {};
  for (const table of PROJECTIONS) {
    const name = getTableName(table);
    const rows = await ctx.store.db.all(sql.raw(`select * from "${name}"`));
    // A window's id is its place in the table, and nothing that follows from the log.
    const plain = rows.map((row) => (name === "windows" ? { ...(row as object), id: 0 } : row));
    tables[name] = plain.map((row) => JSON.stringify(row)).sort();
  }
  return tables;
}

/** A repeatable stream of numbers below `n` (mulberry32). */
function dice(seed: number) {
  let state = seed;
  return (n: number): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) % n;
  };
}
const WOULD_BE = [GOOD, BAD, { closes: "ok" }, { closes: "ok", gap: { value: 9, unit: "mm" } }];
const STATUSES = ["in-service", "quarantined", "retired"] as const;

/** A second site that assets may be moved to. */
async function otherSite({ ctx, ids, newId }: TestEstate): Promise<string> {
  const place = newId();
  const said = { asset: null, author: ids.person, civilDate: "2026-10-01", happenedAt: null };
  const named = {
    parent: null,
    level: "site",
    code: "2",
    name: "Yard",
    zone: "Europe/London",
  } as const;
  const body = { place, ...named };
  await appendEntries(ctx, { entries: [{ ...said, kind: "place-added", body }] });
  return place;
}

/** One entry at random, of a day at random: entries arrive late as often as not. */
async function anything(
  estate: TestEstate & { readonly rooms: readonly string[] },
  assets: string[],
  roll: (n: number) => number,
) {
  const day = `202${4 + roll(3)}-0${1 + roll(9)}-1${roll(10)}`;
  const asset = assets[roll(assets.length)];
  const kind = roll(12);
  if (asset === undefined || kind === 0) {
    const id = estate.newId();
    assets.push(id);
    return estate.registered(id, String(roll(50)), day);
  }
  if (kind === 1)
    return estate.entry("status-changed", asset, { status: STATUSES[roll(3)] ?? "missing" }, day);
  const [room] = estate.rooms;
  if (kind === 4 && room !== undefined)
    return estate.entry("moved", asset, { place: roll(2) === 0 ? room : estate.ids.site }, day);
  if (kind === 2 || kind === 3) {
    const open = (await readDefects(estate.ctx, { open: true })).rows;
    const defect = open[roll(open.length)];
    const step = (["made-safe", "repaired", "verified"] as const)[roll(3)] ?? "verified";
    if (defect) return estate.entry("defect-step", defect.asset, { defect: defect.id, step }, day);
  }
  return estate.inspection(asset, WOULD_BE[roll(WOULD_BE.length)] ?? GOOD, day);
}

async function changeInterval(estate: TestEstate, months: number, ends: boolean): Promise<void> {
  const { ids, ref, ctx } = estate;
  const said = { asset: null, author: ids.person, civilDate: "2026-10-13", happenedAt: null };
  const rule = { kind: "from-last-done", every: `P${months}M` } as const;
  const definition = { title: "Changed", assetType: "door", checklist: ref.id, rule };
  const entries = ends
    ? [{ ...said, kind: "interval-ended" as const, body: { interval: ids.interval } }]
    : [{ ...said, kind: "interval-set" as const, body: { interval: ids.interval, definition } }];
  await appendEntries(ctx, { entries });
}

it.each([1, 2, 3])(
  "projections derived again from the log are the same rows (%i)",
  async (seed) => {
    const bare = await testEstate();
    const estate = { ...bare, rooms: [await otherSite(bare)] };
    const roll = dice(seed);
    const assets: string[] = [];
    for (let round = 0; round < 12; round++) {
      const some: SignedEntry[] = [];
      for (let n = 0; n < 12; n++) some.push(estate.signed(await anything(estate, assets, roll)));
      const outcomes = await sealEntries(estate.ctx, estate.session, some);
      expect(outcomes.filter(({ outcome }) => outcome !== "sealed")).toEqual([]);
      if (round % 4 === 2) await changeInterval(estate, 1 + roll(12), roll(3) === 0);
    }
    const before = await dump(estate.ctx);
    const { entries } = await rebuild(estate.ctx);
    expect(entries).toBeGreaterThan(140);
    expect(before.windows?.length).toBeGreaterThan(0);
    expect(before.defects?.length).toBeGreaterThan(0);
    expect(await dump(estate.ctx)).toEqual(before);
  },
);

it("what results and the time before say of an inspection is the same when derived again", async () => {
  const outlet = await outletEstate();
  const roll = dice(7);
  const sampled: string[] = [];
  for (let round = 0; round < 30; round++) {
    const day = `202${4 + roll(3)}-0${1 + roll(9)}-1${roll(10)}`;
    const of = sampled[roll(sampled.length)];
    const entry =
      of !== undefined && roll(3) === 0
        ? outlet.result(of, [4, 25][roll(2)] ?? 4, day)
        : await outlet.inspection({ ...SAMPLED, flow: { value: 6 + roll(4), unit: "L/min" } }, day);
    if (entry.kind === "inspection") sampled.push(entry.id);
    const [outcome] = await outlet.seal(entry);
    expect(outcome?.outcome).toBe("sealed");
  }
  const before = await dump(outlet.ctx);
  await rebuild(outlet.ctx);
  expect(await dump(outlet.ctx)).toEqual(before);
  expect(before.defects?.length).toBeGreaterThan(0);
  const verdicts = new Set<unknown>();
  for await (const { leaf } of readLog(outlet.ctx))
    verdicts.add(leaf.judgement?.points.flow?.verdict);
  expect([...verdicts]).toEqual(expect.arrayContaining(["pass", "fail"]));
});

it("a batch appended at once, late entries in it, gives the rows that a rebuild gives", async () => {
  const one = await testEstate();
  const { ids, newId } = one;
  const asset = newId();
  const made = (entry: Entry) => entry as never;
  const entries = [made(one.registered(asset, "7", "2024-05-01"))];
  for (const [day, answers] of [
    ["2025-01-10", BAD],
    ["2024-06-10", GOOD],
    ["2025-07-10", GOOD],
  ] as const)
    entries.push(made(await one.inspection(asset, answers, day)));
  await appendEntries(one.ctx, { entries });
  const rows = await dump(one.ctx);
  await rebuild(one.ctx);
  expect(await dump(one.ctx)).toEqual(rows);
  expect(rows.results).toHaveLength(3);
  expect(rows.defects?.[0]).toContain(ids.person);
});

it("the Merkle tree kept with the log is the tree over its leaves", async () => {
  const estate = await testEstate();
  await sealEntries(estate.ctx, estate.session, [
    estate.signed(estate.registered(estate.newId(), "1")),
    estate.signed(estate.registered(estate.newId(), "2")),
  ]);
  let frontier: Frontier = EMPTY_FRONTIER;
  let size = 0;
  for await (const { leaf } of readLog(estate.ctx)) {
    expect(leaf.seq).toBe(++size);
    frontier = appendLeaf(frontier, hashLeaf(leafBytes(leaf), sha256), sha256);
  }
  const kept = await readLogState(estate.ctx.store.db);
  const hex = (nodes: Frontier) => nodes.map(({ level, hash }) => [level, toHex(hash)]);
  expect(kept.size).toBe(size);
  expect(hex(kept.frontier)).toEqual(hex(frontier));
});
