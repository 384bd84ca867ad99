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
