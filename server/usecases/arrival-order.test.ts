import type { Entry, IntervalRule } from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { expect, it } from "vitest";
import { windows } from "../store/schema/due.ts";
import { appendEntries, type Made } from "./append-entries.ts";
import { readAssets } from "./read-assets.ts";
import { rebuild } from "./rebuild.ts";
import { sealEntries } from "./seal-entries.ts";
import { setCalendar } from "./set-calendar.ts";
import { BAD, GOOD, type TestEstate, testEstate } from "./testing/estate.ts";

const risk = (value: string | { any: true }, outcome: string) => ({
  when: [value],
  // biome-ignore lint/suspicious/noThenProperty: a keyword of the dialect, never awaited
  then: outcome,
});

/** A rule of every kind that needs no score. */
const RULES: readonly IntervalRule[] = [
  { kind: "from-last-done", every: "P6M", early: "P14D", late: "P14D" },
  { kind: "anniversary", every: "P12M", within: "P2M", afterLate: "restart" },
  { kind: "anniversary", every: "P12M", within: "P2M", afterLate: "keep", anchor: "2020-04-30" },
  { kind: "each-period", period: "quarter" },
  { kind: "spacing", min: "P4M", max: "P8M" },
  { kind: "recurrence", rrule: "FREQ=MONTHLY;BYDAY=1MO", start: "2024-01-01" },
  { kind: "on-event", after: ["repaired", "modified", "returned"], within: "P7D", blocks: true },
  { kind: "on-event", after: ["reopened"], within: "P0D", early: "P7D" },
  { kind: "on-usage", point: "gap", every: 5, unit: "mm", orAfter: "P9M" },
  {
    kind: "by-risk",
    worse: { exposure: ["inside", "outside"] },
    table: {
      policy: "first",
      inputs: ["asset.exposure"],
      rules: [risk("outside", "P3M"), risk({ any: true }, "P12M")],
    },
  },
];

async function withEveryRule() {
  const estate = await testEstate();
  const { ctx, ids, ref, newId, session } = estate;
  await appendEntries(ctx, {
    entries: RULES.map((rule, at) => ({
      kind: "interval-set",
      asset: null,
      author: ids.person,
      civilDate: "2026-10-01",
      happenedAt: null,
      body: {
        interval: newId(),
        definition: { title: `Rule ${at}`, assetType: "door", checklist: ref.id, rule },
      },
    })),
  });
  await setCalendar(ctx, session, ids.site, {
    weekdays: [{ weekday: 7, reason: "Sunday" }],
    closures: [{ from: "2025-07-01", to: "2025-07-31", reason: "Works" }],
  });
  return estate;
}

/** One asset's life, in the order in which it was lived; several things on one day among them. */
async function lifeOf(estate: TestEstate, asset: string): Promise<Entry[]> {
  const { entry, inspection, ids } = estate;
  const done = await inspection(asset, BAD, "2024-09-02");
  const step = (name: string, day: string) =>
    entry("defect-step", asset, { defect: `${done.id}:closes`, step: name }, day);
  const exposure = (where: string) => ({ particulars: { exposure: where }, reason: "Seen" });
  const rule = { kind: "from-last-done", every: "P1M" };
  const own = { interval: ids.interval, reason: "Heavy use" };
  const gap = (value: number) => ({ ...GOOD, gap: { value, unit: "mm" } });
  return [
    await inspection(asset, gap(2), "2024-03-04"),
    done,
    step("made-safe", "2024-09-02"),
    step("repaired", "2024-10-07"),
    await inspection(asset, gap(3), "2024-10-07"),
    entry("particulars-changed", asset, { ...exposure("outside"), modified: true }, "2025-01-13"),
    entry("status-changed", asset, { status: "quarantined" }, "2025-02-03"),
    entry("status-changed", asset, { status: "in-service" }, "2025-02-24"),
    await inspection(asset, gap(4), "2025-02-24"),
    entry("interval-overridden", asset, { ...own, rule }, "2025-03-03"),
    entry("override-ended", asset, own, "2025-05-05"),
    entry("interval-overridden", asset, { ...own, rule: { ...rule, every: "P2M" } }, "2025-05-05"),
    await inspection(asset, gap(8), "2025-08-11"),
    await inspection(asset, gap(9), "2025-08-11"),
    entry("particulars-changed", asset, exposure("inside"), "2025-11-03"),
    entry("status-changed", asset, { status: "quarantined" }, "2026-04-06"),
    entry("status-changed", asset, { status: "in-service" }, "2026-04-06"),
  ];
}

/** The same entries in another order that follows from the seed (a linear congruence). */
function shuffled<T>(given: readonly T[], seed: number): T[] {
  let state = seed;
  const keyed = given.map((one) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return { one, key: state };
  });
  return keyed.sort((a, b) => a.key - b.key).map(({ one }) => one);
}

/** What an asset's windows say, with entries named by their place in its life. */
async function windowsOf({ ctx }: TestEstate, asset: string, life: readonly Entry[]) {
  const rows = await ctx.store.db.select().from(windows).where(eq(windows.asset, asset));
  return rows
    .map((row) => {
      const text = JSON.stringify({ ...row, id: 0, asset: "" });
      return life.reduce((said, { id }, at) => said.replaceAll(id, `#${at}`), text);
    })
    .sort();
}

it("windows follow from what was done and when, not from the order in which it was sent", async () => {
  const estate = await withEveryRule();
  const { ctx, session, signed, registered, newId } = estate;
  const said: string[][] = [];
  for (let seed = 0; seed <= 8; seed++) {
    const asset = newId();
    await sealEntries(ctx, session, [signed(registered(asset, `D-${seed}`, "2024-01-08"))]);
    const life = await lifeOf(estate, asset);
    const order = seed === 0 ? life : seed === 1 ? life.toReversed() : shuffled(life, seed);
    // One at a time, and several in one batch.
    const size = 1 + (seed % 3) * 3;
    for (let from = 0; from < order.length; from += size) {
      const some = order.slice(from, from + size);
      await appendEntries(ctx, { entries: some as readonly Made[] });
    }
    said.push(await windowsOf(estate, asset, life));
  }
  const [lived = [], ...others] = said;
  expect(lived).toHaveLength(RULES.length + 1);
  expect(lived.filter((row) => row.includes('"state":"blocked"')).length).toBeGreaterThan(0);
  for (const other of others) expect(other).toEqual(lived);

  const all = async () =>
    (await ctx.store.db.select().from(windows))
      .map((row) => JSON.stringify({ ...row, id: 0 }))
      .sort();
  const before = await all();
  await rebuild(ctx);
  expect(await all()).toEqual(before);
  expect((await readAssets(ctx, {})).rows).toHaveLength(said.length);
}, 60_000);
