import "fake-indexeddb/auto";
import type { SignedEntry } from "@roundbook/schemas";
import { beforeEach, expect, test } from "vitest";
import { type DeviceDatabase, type Draft, type OutboxRow, openDevice } from "./database.ts";
import { finish, listOutbox, listSent, settle, takeBack } from "./outbox.ts";

let database: DeviceDatabase;
let turn = 0;
beforeEach(async () => {
  turn += 1;
  database = await openDevice(`outbox-${turn}`);
});

const draft: Draft = {
  key: "asset:hash",
  asset: "asset",
  site: "site",
  checklistHash: "hash",
  person: "person",
  startedAt: 1,
  changedAt: 2,
  answers: { cable: "ok" },
  evidence: {},
  declared: [],
  cautionsAt: null,
};

const row = (id: string, from: Draft | null = draft): OutboxRow => ({
  id,
  signed: {
    entry: {
      id,
      kind: "inspection",
      asset: "asset",
      body: { checklist: { id: "list" }, judgement: {} },
    },
    hash: "",
    signature: "",
    contents: [],
  } as unknown as SignedEntry,
  person: "person",
  state: "waiting",
  problems: [],
  madeAt: 3,
  summary: { number: "4033", description: "Lead", words: "Lead", overall: "pass" },
  draft: from,
});

const problem = { pointer: "/entry", code: "hash-differs", params: {} };

test("finishing puts the entry in and takes the draft out, together", async () => {
  await database.put("drafts", draft);
  await finish(database, row("a"));
  expect(await listOutbox(database)).toHaveLength(1);
  expect(await database.count("drafts")).toBe(0);
});

test("when the entry cannot be put in, the draft stays", async () => {
  await finish(database, row("a", null));
  await database.put("drafts", draft);
  await expect(finish(database, row("a"))).rejects.toThrow();
  expect(await database.get("drafts", draft.key)).toEqual(draft);
  expect(await listOutbox(database)).toHaveLength(1);
});

test("only an acknowledgement of that very id lets an entry go", async () => {
  for (const id of ["a", "b", "c"]) await finish(database, row(id));
  await settle(database, { id: "b", outcome: "already", seq: 7, leaf: {} as never }, 9);
  await settle(database, { id: "unknown", outcome: "already", seq: 8, leaf: {} as never }, 9);
  expect((await listOutbox(database)).map(({ id }) => id)).toEqual(["a", "c"]);
  expect(await listSent(database, 0)).toMatchObject([{ id: "b", seq: 7, checklist: "list" }]);
});

test("an acknowledgement that comes twice leaves one sent entry", async () => {
  await finish(database, row("a"));
  for (const seq of [7, 7])
    await settle(database, { id: "a", outcome: "sealed", seq, leaf: {} as never }, 9);
  expect(await listSent(database, 0)).toHaveLength(1);
});

test("a refused entry stays with its reason, and one asked for later stays to be sent", async () => {
  for (const id of ["a", "b"]) await finish(database, row(id));
  await settle(database, { id: "a", outcome: "refused", problems: [problem] }, 9);
  await settle(database, { id: "b", outcome: "retry-later", problems: [problem] }, 9);
  expect((await listOutbox(database)).map(({ id, state }) => [id, state])).toEqual([
    ["a", "refused"],
    ["b", "later"],
  ]);
});

test("a waiting entry is taken back to its draft; one that was sent is not", async () => {
  await finish(database, row("a"));
  expect(await takeBack(database, "a")).toBe(true);
  expect(await database.get("drafts", draft.key)).toEqual(draft);
  expect(await listOutbox(database)).toEqual([]);
  expect(await takeBack(database, "a")).toBe(false);
});
