import type { DueStatus, SignedEntry } from "@roundbook/schemas";
import { sql } from "drizzle-orm";
import { expect, it } from "vitest";
import { countDue } from "./count-due.ts";
import { encodeCursor } from "./cursor.ts";
import type { DueScope } from "./due-scope.ts";
import { readAssets } from "./read-assets.ts";
import { readBundle } from "./read-bundle.ts";
import { dueQueries, readDue } from "./read-due.ts";
import { Refusal } from "./refusal.ts";
import { sealEntries } from "./seal-entries.ts";
import { BAD, GOOD, testEstate } from "./testing/estate.ts";

const ALL: readonly DueStatus[] = [
  "not-yet",
  "early",
  "due",
  "late-window",
  "overdue",
  "never-done",
];

/** Thirty doors registered on 1 January 2026; all but every tenth inspected on days of that spring. */
async function withDoors() {
  const estate = await testEstate();
  const { ctx, session, signed, registered, inspection, newId } = estate;
  const some: SignedEntry[] = [];
  for (let n = 1; n <= 30; n++) {
    const asset = newId();
    some.push(signed(registered(asset, `D-${n}`, "2026-01-01")));
    const day = `2026-0${1 + (n % 6)}-1${n % 10}`;
    if (n % 10 !== 0) some.push(signed(await inspection(asset, n === 1 ? BAD : GOOD, day)));
  }
  await sealEntries(ctx, session, some.slice(0, 30));
  await sealEntries(ctx, session, some.slice(30));
  return estate;
}

async function pages(
  read: (cursor?: string) => Promise<{ rows: readonly object[]; next: string | null }>,
) {
  const rows: object[] = [];
  for (let cursor: string | undefined; ; ) {
    const page = await read(cursor);
    rows.push(...page.rows);
    if (page.next === null) return rows;
    cursor = page.next;
  }
}

it("pages of the due list join without a gap or an overlap, in the order of due dates", async () => {
  const { ctx, ids } = await withDoors();
  const whole = await readDue(ctx, { site: ids.site, limit: 200 });
  const joined = await pages((cursor) => readDue(ctx, { site: ids.site, limit: 7, cursor }));
  expect(joined).toEqual(whole.rows);
  expect(whole.rows).toHaveLength(30);
  const dues = whole.rows.map(({ due }) => due);
  expect(dues).toEqual([...dues].sort());
});

it.each(["2026-06-30", "2026-07-11", "2026-08-12", "2026-09-01", "2027-01-01"])(
  "on %s each row stands under its own status and no other",
  async (on) => {
    const { ctx } = await withDoors();
    const whole = await readDue(ctx, { on, limit: 200 });
    let listed = 0;
    for (const status of ALL) {
      const { rows } = await readDue(ctx, { on, status, limit: 200 });
      expect(rows).toEqual(whole.rows.filter((row) => row.status === status));
      listed += rows.length;
    }
    expect(listed).toBe(30);
    const count = await countDue(ctx, { on });
    expect(count.overdue.count).toBe(
      whole.rows.filter(({ status }) => status === "overdue").length,
    );
  },
);

it("words find by their beginning, numbers are in the order people count in", async () => {
  const { ctx } = await withDoors();
  const { rows } = await readAssets(ctx, { q: "d-2" });
  expect(rows.map(({ number }) => number)).toEqual([
    "D-2",
    "D-20",
    "D-21",
    "D-22",
    "D-23",
    "D-24",
    "D-25",
    "D-26",
    "D-27",
    "D-28",
    "D-29",
  ]);
  expect((await readAssets(ctx, { q: "ICE door 30" })).rows.map(({ number }) => number)).toEqual([
    "D-30",
  ]);
  expect((await readAssets(ctx, { q: "no%such_" })).rows).toEqual([]);
  expect((await readDue(ctx, { q: "d-2 store" })).rows).toHaveLength(11);
  expect(rows[0]?.path).toEqual(["Ferry Hall"]);
});

it("a broken cursor is the asker's mistake", async () => {
  const { ctx } = await testEstate();
  await expect(readDue(ctx, { cursor: "WzFd" })).rejects.toBeInstanceOf(Refusal);
  await expect(readAssets(ctx, { cursor: "~" })).rejects.toMatchObject({ code: "bad-cursor" });
});

it("a site's bundle holds its register, windows, checklists, last results and open defects", async () => {
  const { ctx, ids, ref } = await withDoors();
  const bundle = await readBundle(ctx, ids.site);
  expect(bundle?.today).toBe("2026-10-13");
  expect(bundle?.assets).toHaveLength(30);
  expect(bundle?.due).toHaveLength(30);
  expect(bundle?.lastResults).toHaveLength(27);
  expect(bundle?.checklists.map(({ hash }) => hash)).toEqual([ref.hash]);
  expect(bundle?.defects).toMatchObject([
    { number: 1, assetNumber: "D-1", point: "closes", by: "2026-02-18", step: "raised" },
  ]);
  expect(await readBundle(ctx, ids.person)).toBeNull();
});

/** As many windows of one more type as are too many to be sorted. */
async function withMany() {
  const estate = await testEstate();
  const { ids } = estate;
  await estate.ctx.store.write(async (tx) => {
    await tx.run(sql`insert into windows (asset, interval, generation, site, place, asset_type, keeper,
      earliest, due, latest, why) with recursive n(i) as (select 1 union all select i + 1 from n where i < 1001)
      select 'asset ' || i, 'none', 0, ${ids.site}, ${ids.site}, 'many', ${ids.person}, i, i, i,
      '{"code":"from-last-done","params":{}}' from n`);
  });
  return estate;
}

it("every filter of the due list has an index that gives its order: nothing is sorted, nothing is searched for in vain", async () => {
  const { ctx, ids } = await withMany();
  const { db } = ctx.store;
  const cursor = encodeCursor([1, 1]);
  const orders: Record<string, readonly DueStatus[]> = {
    due: ["early", "due", "late-window", "overdue"],
    opening: ["not-yet"],
    never_done: ["never-done"],
    state: ["blocked", "excused", "undecided"],
  };
  const scopes: readonly [string, DueScope][] = [
    ["all", {}],
    ["site", { site: ids.site }],
    ["place", { place: ids.site }],
    ["place", { place: ids.site, site: ids.site, assetType: "many" }],
    ["keeper", { keeper: ids.person }],
    ["keeper", { keeper: ids.person, site: ids.site, assetType: "many" }],
    ["type", { assetType: "many" }],
    ["type", { assetType: "door", site: ids.site }],
  ];
  for (const [order, statuses] of Object.entries(orders))
    for (const status of statuses)
      for (const [scope, asked] of scopes)
        for (const more of [{}, { cursor }]) {
          const { queries } = await dueQueries(ctx, { ...asked, ...more, status });
          for (const query of queries) {
            const plan = await db.all<{ detail: string }>(
              sql`explain query plan ${query.getSQL()}`,
            );
            const steps = plan.map(({ detail }) => detail);
            const said = `${status} of ${JSON.stringify(asked)}: ${steps.join("; ")}`;
            // Few of a type are sorted, by whatever index finds them; nothing else is.
            const few = asked.assetType === "door";
            const led = few ? "\\w+" : order;
            expect(steps[0], said).toMatch(new RegExp(`windows_${led}_${scope}\\b`));
            if (!few)
              expect(
                steps.filter((step) => /TEMP B-TREE/.test(step)),
                said,
              ).toEqual([]);
          }
        }
});

it("few assets that a word names lead whatever else is asked for", async () => {
  const { ctx, ids } = await withDoors();
  const { db } = ctx.store;
  for (const status of ["blocked", "undecided", "never-done", "overdue", "not-yet"] as const)
    for (const asked of [{}, { site: ids.site }, { keeper: ids.person }, { assetType: "door" }]) {
      const { queries } = await dueQueries(ctx, { ...asked, status, q: "d-29" });
      for (const query of queries) {
        const plan = await db.all<{ detail: string }>(sql`explain query plan ${query.getSQL()}`);
        const steps = plan.map(({ detail }) => detail).filter((step) => /windows/.test(step));
        expect(steps).toEqual([expect.stringMatching(/windows_by_asset/)]);
      }
    }
});
