import type { SiteBundle } from "@roundbook/schemas";
import { expect, test } from "vitest";
import type { OutboxRow } from "./database.ts";
import { withWaiting } from "./overlay.ts";

const bundle = {
  site: { id: "s", name: "Quay" },
  places: [],
  assets: [],
  due: [],
  checklists: [{ id: "list", issue: 1, document: { minutes: 7, properties: {} } }],
  intervals: [
    {
      id: "yearly",
      definition: {
        title: "Yearly",
        assetType: "door",
        checklist: "list",
        rule: { kind: "from-last-done", every: "P1Y", first: "P1M" },
      },
    },
  ],
  calendar: { closures: [{ from: "2026-11-10", to: "2026-11-20", reason: "Storm works" }] },
  overrides: [],
  today: "2026-10-13",
} as unknown as SiteBundle;
const registered = {
  signed: {
    entry: {
      kind: "registered",
      asset: "a",
      civilDate: "2026-10-13",
      body: { number: "1", assetType: "door", description: "Door", place: "s", particulars: {} },
    },
  },
} as unknown as OutboxRow;

test("an asset registered here is due by the site's calendar before it is sent", async () => {
  const { due } = await withWaiting(bundle, [registered]);
  expect(due).toMatchObject([{ asset: "a", due: "2026-11-09", minutes: 7, lastDone: null }]);
  expect(due[0]?.why.moved?.map(({ code }) => code)).toEqual(["rolled-back"]);
});

test("without anything waiting a site is as it was sent", async () => {
  expect(await withWaiting(bundle, [])).toBe(bundle);
});

test("an asset moved here stands at its new place before it is sent, one registered here too; a refused move changes nothing", async () => {
  const rooms = {
    ...bundle,
    places: [{ id: "room", parent: "s", name: "Store" }],
    assets: [{ id: "b", place: "s", path: ["Quay"] }],
    due: [{ asset: "b", place: "s" }],
  } as unknown as SiteBundle;
  const moved = (asset: string, place: string, state = "waiting") =>
    ({ state, signed: { entry: { kind: "moved", asset, body: { place } } } }) as OutboxRow;
  const outbox = [registered, moved("a", "room"), moved("b", "s"), moved("b", "room")];
  const { assets, due } = await withWaiting(rooms, outbox);
  expect(assets).toMatchObject([
    { id: "b", place: "room", path: ["Quay", "Store"] },
    { id: "a", place: "room", path: ["Quay", "Store"] },
  ]);
  expect(due.map(({ place }) => place)).toEqual(["room", "room"]);
  expect(await withWaiting(rooms, [moved("b", "room", "refused")])).toBe(rooms);
  expect(await withWaiting(rooms, [moved("b", "of another site")])).toBe(rooms);
});
