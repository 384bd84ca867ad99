import type { DueRow, Entry, HistoryEntry, Page, ReceiveResultReply } from "@roundbook/schemas";
import { STARTERS } from "@roundbook/schemas/starters";
import { afterAll, beforeAll, expect, it } from "vitest";
import { createNewId } from "../new-id.ts";
import { createSigningKey } from "../usecases/demo/device.ts";
import {
  addRole,
  beginOwn,
  NOW,
  personOf,
  startServer,
  type TestServer,
} from "./testing/server.ts";

const found = STARTERS.find(({ key }) => key === "calorifier");
if (!found) throw new Error("there is no example for calorifiers");
const CALORIFIER = found;
const newId = createNewId(() => NOW);
const PARTICULARS = {
  capacity: 300,
  circulates: true,
  gauge: false,
  drained: false,
  sampled: true,
};
let server: TestServer;
let owner: string;

async function ask<T>(method: string, path: string, body?: unknown, as = owner): Promise<T> {
  const reply = await server.call(method, path, { as, body });
  const text = await reply.text();
  expect(reply.status, `${method} ${path}: ${text}`).toBeLessThan(300);
  return (text === "" ? null : JSON.parse(text)) as T;
}

/** A calorifier by the example checklist, inspected by a device: its sample is on its way. */
async function sampled(): Promise<{ inspection: Entry; asset: string }> {
  const draft = await ask<{ checklist: string; revision: number }>("POST", "/api/drafts", {
    document: CALORIFIER.checklist,
  });
  const issued = await ask<{ id: string; issue: number; hash: string }>(
    "POST",
    `/api/drafts/${draft.checklist}/issue`,
    { revision: draft.revision },
  );
  const { name, title, particulars } = CALORIFIER.assetType;
  await ask("PUT", `/api/asset-types/${name}`, {
    assetType: name,
    title,
    particulars,
    checklists: [issued.id],
    version: 0,
  });
  await ask("POST", "/api/intervals", {
    title: CALORIFIER.interval.title,
    rule: { kind: "from-last-done", every: "P1M" },
    assetType: name,
    checklist: issued.id,
  });
  const site = {
    parent: null,
    level: "site",
    code: "2",
    name: "Ferry Hall",
    zone: "Europe/London",
  };
  const { id: place } = await ask<{ id: string }>("POST", "/api/places", site);
  const { id: asset } = await ask<{ id: string }>("POST", "/api/assets", {
    number: "1",
    assetType: name,
    description: "Calorifier",
    place,
    particulars: PARTICULARS,
  });
  const device = newId();
  const signing = createSigningKey();
  await ask("POST", "/api/devices", { device, key: signing.key, label: "Tablet" });
  const inspection = {
    id: newId(),
    kind: "inspection",
    asset,
    author: await personOf(server, owner),
    device,
    happenedAt: new Date(NOW).toISOString(),
    civilDate: "2026-10-13",
    body: {
      checklist: { id: issued.id, issue: issued.issue, hash: issued.hash },
      particulars: PARTICULARS,
      answers: {
        tight: "ok",
        lagging: "ok",
        flow: { value: 62, unit: "Cel" },
        back: { value: 55, unit: "Cel" },
        legionella: { sample: "B-17" },
      },
      judgement: {},
    },
  } as unknown as Entry;
  const { outcomes } = await ask<{ outcomes: unknown[] }>("POST", "/api/entries", {
    entries: [signing.sign(inspection)],
  });
  expect(outcomes).toMatchObject([{ outcome: "sealed" }]);
  return { inspection, asset };
}

beforeAll(async () => {
  server = await startServer();
  owner = await beginOwn(server);
}, 30_000);
afterAll(() => server.close());

it("the result of a sample is taken in over the network, by whoever works on the round", async () => {
  const { inspection, asset } = await sampled();
  const due = async () => (await ask<Page<DueRow>>("GET", "/api/due")).rows[0];
  const path = `/api/entries/${inspection.id}/results`;
  const pending = await ask<HistoryEntry>("GET", `/api/entries/${inspection.id}`);
  expect(pending.leaf.judgement).toMatchObject({
    overall: "undecided",
    complete: false,
    pending: ["legionella"],
  });
  expect(await due()).toMatchObject({ lastDone: null });

  const quantity = CALORIFIER.checklist.properties.legionella?.quantity;
  const given = { point: "legionella", result: { value: 0, unit: quantity?.unit ?? "1" } };
  const auditor = await addRole(server, owner, "auditor");
  expect((await server.call("POST", path, { as: auditor, body: given })).status).toBe(403);
  const wrong = { ...given, result: { value: 0, unit: "mm" } };
  const refused = await server.call("POST", path, { as: owner, body: wrong });
  expect(refused.status).toBe(422);
  expect(await refused.json()).toMatchObject({
    code: "result-not-right",
    problems: [{ pointer: "/result/unit", code: "unit-not-convertible" }],
  });

  const received = await ask<ReceiveResultReply>("POST", path, given);
  expect(received.judgement).toMatchObject({ overall: "pass", complete: true, pending: [] });
  expect(await due()).toMatchObject({ lastDone: "2026-10-13", lastVerdict: "pass" });
  const { rows } = await ask<Page<HistoryEntry>>("GET", `/api/assets/${asset}/history`);
  const [sealed] = rows.filter(({ entry }) => entry.kind === "inspection");
  expect(sealed?.received?.entries.map(({ id }) => id)).toEqual([received.id]);
  expect(server.reported).toEqual([]);
});
