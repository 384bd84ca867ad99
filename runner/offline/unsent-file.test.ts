// @vitest-environment node
import "fake-indexeddb/auto";
import type { SignedEntry } from "@roundbook/schemas";
import { expect, test } from "vitest";
import { type DeviceDatabase, type Draft, type OutboxRow, openDevice } from "./database.ts";
import { deviceKey } from "./device-key.ts";
import { makeEntry } from "./make-entry.ts";
import { readUnsent, writeUnsent } from "./unsent-file.ts";

const NOW = Date.parse("2026-10-13T09:00:00Z");
const draft = (changedAt: number, asset = "asset"): Draft => ({
  key: `${asset}:hash`,
  asset,
  site: "site",
  checklistHash: "hash",
  person: "person",
  startedAt: 1,
  changedAt,
  answers: { cable: changedAt % 2 === 0 ? "ok" : "not-ok" },
  evidence: {},
  declared: [],
  cautionsAt: null,
});

async function signed(database: DeviceDatabase): Promise<SignedEntry> {
  const made = { kind: "correction", body: { corrects: "x" } } as never;
  const where = { asset: "asset", contents: [], now: NOW, civilDate: "2026-10-13" };
  return makeEntry(await deviceKey(database, "person"), made, where);
}

const rowOf = (one: SignedEntry, state: OutboxRow["state"] = "waiting"): OutboxRow => ({
  id: one.entry.id,
  signed: one,
  person: "person",
  state,
  problems: [],
  madeAt: 3,
  summary: { number: "4033", description: "Lead", words: "Lead", overall: "pass" },
  draft: null,
});

const hashOf = async (text: string): Promise<string> =>
  Buffer.from(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text))).toString(
    "hex",
  );

async function full(name: string) {
  const database = await openDevice(name);
  const row = rowOf(await signed(database));
  await database.put("outbox", row);
  await database.put("drafts", draft(2));
  const photo = async (text: string, sent: boolean) =>
    database.put("evidence", {
      sha256: await hashOf(text),
      blob: new Blob([text], { type: "image/jpeg" }),
      sent,
      takenAt: 7,
    });
  await photo("unsent picture", false);
  await photo("sent picture", true);
  return { database, row };
}

test("what one device saved to a file another takes up whole: entries as signed, drafts, unsent photos", async () => {
  const { database, row } = await full("file-1");
  const file = await writeUnsent(database, NOW);
  const other = await openDevice("file-2");
  expect(await readUnsent(other, file)).toEqual({
    entries: 1,
    drafts: 1,
    photos: 1,
    known: 0,
    faults: [],
  });
  expect(await other.getAll("outbox")).toEqual([row]);
  expect(await other.getAll("drafts")).toEqual([draft(2)]);
  const [photo] = await other.getAll("evidence");
  expect(photo?.sha256).toBe(await hashOf("unsent picture"));
  expect(photo?.sent).toBe(false);
  expect(await readUnsent(other, file)).toMatchObject({ entries: 0, drafts: 0, known: 3 });
});

test("a draft that the device could not keep goes into the file beside those it has", async () => {
  const { database } = await full("file-3");
  const file = await writeUnsent(database, NOW, draft(9));
  expect(JSON.parse(await file.text()).drafts).toEqual([draft(9)]);
  const both = await writeUnsent(database, NOW, draft(9, "other"));
  expect(JSON.parse(await both.text()).drafts).toHaveLength(2);
});

test("what was sent from here is not taken up again, and of two drafts the one changed last is kept", async () => {
  const { database, row } = await full("file-4");
  const file = await writeUnsent(database, NOW);
  await database.delete("outbox", row.id);
  await database.put("sent", { id: row.id, sentAt: NOW } as never);
  await database.put("drafts", draft(5));
  expect(await readUnsent(database, file)).toMatchObject({ entries: 0, drafts: 0, known: 3 });
  expect(await database.count("outbox")).toBe(0);
  await database.put("drafts", draft(1));
  expect(await readUnsent(database, file)).toMatchObject({ drafts: 1 });
  expect(await database.get("drafts", draft(2).key)).toEqual(draft(2));
});

test("a check that was begun here too keeps its own draft, and the other is named", async () => {
  const { database } = await full("file-8");
  const file = await writeUnsent(database, NOW);
  const own = { ...draft(1), startedAt: 99 };
  await database.put("drafts", own);
  expect((await readUnsent(database, file)).faults).toEqual([
    { pointer: "/drafts/0", code: "draft-differs-here" },
  ]);
  expect(await database.get("drafts", own.key)).toEqual(own);
});

test("an altered entry, an entry that differs from the one here, a photo and a draft that are not whole are named and left out; the sound rest is taken up", async () => {
  const { database, row } = await full("file-5");
  const file = JSON.parse(await (await writeUnsent(database, NOW)).text());
  const altered = structuredClone(row);
  (altered.signed.entry as { civilDate: string }).civilDate = "2020-01-01";
  file.outbox.unshift(altered);
  file.photos.push({ ...file.photos[0], base64: btoa("another picture") });
  file.drafts.push({ key: "a:b" }, "nothing");
  const other = await openDevice("file-6");
  const forged = rowOf({ ...(await signed(other)) });
  const told = await readUnsent(other, new Blob([JSON.stringify(file)]));
  expect(told).toEqual({
    entries: 1,
    drafts: 1,
    photos: 1,
    known: 0,
    faults: [
      { pointer: "/photos/1", code: "photo-altered" },
      { pointer: "/outbox/0", code: "entry-altered" },
      { pointer: "/drafts/1", code: "draft-not-whole" },
      { pointer: "/drafts/2", code: "draft-not-whole" },
    ],
  });
  await other.put("outbox", { ...forged, id: row.id });
  expect((await readUnsent(other, new Blob([JSON.stringify(file)]))).faults).toContainEqual({
    pointer: "/outbox/1",
    code: "entry-differs-here",
  });
});

test("a file of another kind is refused as a whole, and nothing changes", async () => {
  const database = await openDevice("file-7");
  for (const text of ["", "{", "[]", '{"kind":"other"}', "null", '"roundbook-unsent"'])
    expect((await readUnsent(database, new Blob([text]))).faults).toEqual([
      { pointer: "", code: "not-unsent-work" },
    ]);
  expect(await readUnsent(database, new Blob(['{"kind":"roundbook-unsent"}']))).toEqual({
    entries: 0,
    drafts: 0,
    photos: 0,
    known: 0,
    faults: [],
  });
});
