import type { SignedEntry, SiteBundle } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { mergeChanges } from "../../runner/sync/merge-changes.ts";
import { addPlace } from "../../server/usecases/add-place.ts";
import { changeParticulars } from "../../server/usecases/change-particulars.ts";
import { readBundle, readChanges } from "../../server/usecases/read-bundle.ts";
import { readSiteHistory } from "../../server/usecases/read-history.ts";
import { sealEntries } from "../../server/usecases/seal-entries.ts";
import { BAD, GOOD, type TestEstate, testEstate } from "../../server/usecases/testing/estate.ts";

/** Numbers that look random and are the same each time. */
const numbers = (seed: number) => () => {
  seed = (seed * 1_103_515_245 + 12_345) % 2_147_483_648;
  return seed / 2_147_483_648;
};

const sorted = (bundle: SiteBundle | null) => {
  if (bundle === null) throw new Error("no bundle");
  const by = <Row>(rows: readonly Row[], keyOf: (row: Row) => string) =>
    [...rows].sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1));
  return {
    ...bundle,
    // How a window stands is worked out by the device for its own day.
    due: bundle.due.map(({ status: _, ...row }) => row),
    assets: by(bundle.assets, ({ id }) => id),
    lastResults: by(bundle.lastResults, ({ asset, checklist }) => `${asset} ${checklist}`),
    overrides: by(bundle.overrides, ({ asset, interval }) => `${asset} ${interval}`),
    checklists: by(bundle.checklists, ({ hash }) => hash),
  };
};

async function some(estate: TestEstate, assets: string[], random: () => number) {
  const { signed, registered, inspection, entry, newId } = estate;
  const list: SignedEntry[] = [];
  for (let at = 0; at < 6; at += 1) {
    const asset = assets[Math.floor(random() * assets.length)];
    const day = `2026-0${1 + Math.floor(random() * 9)}-1${Math.floor(random() * 10)}`;
    const kind = random();
    if (asset === undefined || kind < 0.25) {
      const id = newId();
      list.push(signed(registered(id, `D-${assets.length + 1}`, "2026-01-01")));
      assets.push(id);
    } else if (kind < 0.75)
      list.push(signed(await inspection(asset, random() < 0.3 ? BAD : GOOD, day)));
    else if (kind < 0.9)
      list.push(
        signed(entry("not-completed", asset, { checklist: estate.ref, reason: "no-access" }, day)),
      );
    else list.push(signed(entry("status-changed", asset, { status: "out-of-service" }, day)));
  }
  return list;
}

test.each([1, 2, 3, 4])(
  "a site kept by its changes is the site as it is read whole (seed %i)",
  async (seed) => {
    const estate = await testEstate();
    const { ctx, session, ids } = estate;
    const random = numbers(seed);
    const assets: string[] = [];
    await sealEntries(ctx, session, await some(estate, assets, random));
    let kept = (await readBundle(ctx, ids.site)) as SiteBundle;
    for (let turn = 0; turn < 6; turn += 1) {
      await sealEntries(ctx, session, await some(estate, assets, random));
      if (random() < 0.3 && assets[0] !== undefined)
        await changeParticulars(ctx, session, assets[0], {
          particulars: {},
          reason: "As measured again",
        } as never);
      const changes = await readChanges(ctx, ids.site, kept);
      if (changes === null) throw new Error("the site has to be read whole");
      kept = mergeChanges(kept, changes);
      expect(sorted(kept)).toEqual(sorted(await readBundle(ctx, ids.site)));
    }
  },
);

test("nothing new is an empty change; a place, a rule or another generation asks for the whole", async () => {
  const estate = await testEstate();
  const { ctx, session, ids, signed, registered, newId } = estate;
  await sealEntries(ctx, session, [signed(registered(newId(), "D-1"))]);
  const kept = (await readBundle(ctx, ids.site)) as SiteBundle;
  const changes = await readChanges(ctx, ids.site, kept);
  expect(changes).toMatchObject({ assets: [], due: [], gone: [], cursor: kept.cursor });
  expect(await readChanges(ctx, ids.site, { ...kept, stamp: "0" })).toBeNull();
  expect(await readChanges(ctx, ids.site, { ...kept, today: "2025-12-31" })).toBeNull();
  expect(await readChanges(ctx, ids.site, { ...kept, cursor: kept.cursor + 9 })).toBeNull();
  await addPlace(ctx, session, { parent: ids.site, level: "room", code: "2", name: "Loft" });
  expect(await readChanges(ctx, ids.site, kept)).toBeNull();
});

test("the history of a site comes in the order of the log, and goes on where it stopped", async () => {
  const estate = await testEstate();
  const { ctx, session, ids } = estate;
  const assets: string[] = [];
  const random = numbers(9);
  for (let turn = 0; turn < 4; turn += 1)
    await sealEntries(ctx, session, await some(estate, assets, random));
  const all = await readSiteHistory(ctx, ids.site, 0, "2025-01-01");
  expect(all.more).toBe(false);
  expect(all.rows).toHaveLength(24);
  const seqs = all.rows.map(({ leaf }) => leaf.seq);
  expect(seqs).toEqual([...seqs].sort((a, b) => a - b));
  const middle = seqs[10] ?? 0;
  const rest = await readSiteHistory(ctx, ids.site, middle, "2025-01-01");
  expect(rest.rows).toEqual(all.rows.slice(11));
  const late = await readSiteHistory(ctx, ids.site, 0, "2026-06-01");
  expect(late.rows.every(({ entry }) => entry.civilDate >= "2026-06-01")).toBe(true);
  expect(late.rows.length).toBeLessThan(24);
  expect((await readSiteHistory(ctx, ids.person, 0, "2025-01-01")).rows).toEqual([]);
});
