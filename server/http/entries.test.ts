import type {
  AssetRow,
  ChecklistRow,
  DefectRow,
  DueRow,
  Entry,
  EntryOutcome,
  HistoryEntry,
  Page,
  SignedEntry,
} from "@roundbook/schemas";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { createNewId } from "../new-id.ts";
import { createSigningKey, type SigningKey } from "../usecases/demo/device.ts";
import {
  beginDemo,
  NOW,
  personOf,
  signIn,
  startServer,
  type TestServer,
} from "./testing/server.ts";

const newId = createNewId(() => NOW);
const device = newId();
let server: TestServer;
let dag: string;
let author: string;
let key: SigningKey;
let basin: { asset: AssetRow; due: DueRow[]; defects: DefectRow[] };
let checklist: ChecklistRow;

beforeAll(async () => {
  server = await startServer();
  await beginDemo(server);
  dag = await signIn(server, "dag");
  author = await personOf(server, dag);
  key = createSigningKey();
  const enrolled = { device, key: key.key, label: "Dag's tablet" };
  const reply = await server.call("POST", "/api/devices", { as: dag, body: enrolled });
  if (reply.status !== 204) throw new Error(await reply.text());
  basin = await read("/api/assets/number:4047");
  const { rows } = await read<{ rows: ChecklistRow[] }>("/api/checklists");
  const found = rows.find(({ id }) => id === basin.due[0]?.checklist);
  if (!found) throw new Error("no checklist for the basin");
  checklist = found;
}, 30_000);
afterAll(() => server.close());

async function read<T>(path: string): Promise<T> {
  const reply = await server.call("GET", path, { as: dag });
  expect(reply.status, path).toBe(200);
  return (await reply.json()) as T;
}

interface Changed {
  readonly answers?: Record<string, unknown>;
  readonly hash?: string;
  readonly asset?: string;
  readonly id?: string;
}

function inspection({ answers, hash, asset, id }: Changed = {}): Entry {
  const { id: of, issue, hash: own } = checklist;
  return {
    id: id ?? newId(),
    kind: "inspection",
    asset: asset ?? basin.asset.id,
    author,
    device,
    happenedAt: new Date(server.now).toISOString(),
    civilDate: "2026-10-13",
    body: {
      checklist: { id: of, issue, hash: hash ?? own },
      particulars: {},
      answers: answers ?? {
        hot: { value: 51, unit: "Cel" },
        cold: { value: 11.5, unit: "Cel" },
        tap: "ok",
      },
      judgement: {},
    },
  };
}

async function deliver(...entries: SignedEntry[]): Promise<EntryOutcome[]> {
  const reply = await server.call("POST", "/api/entries", { as: dag, body: { entries } });
  const text = await reply.text();
  expect(reply.status, text).toBe(200);
  return (JSON.parse(text) as { outcomes: EntryOutcome[] }).outcomes;
}
const history = async () =>
  (await read<Page<HistoryEntry>>(`/api/assets/${basin.asset.id}/history?limit=200`)).rows;

describe("entries of a device", () => {
  it("are answered per id: the good one is sealed beside the bad ones", async () => {
    const before = (await history()).length;
    const unfit = inspection({ answers: { hot: "warm", cold: { value: 11, unit: "Cel" } } });
    const stranger = inspection({ hash: "0".repeat(64) });
    const nowhere = inspection({ asset: newId() });
    const good = inspection();
    const altered = { ...key.sign(inspection()), hash: "1".repeat(64) };
    const formless = key.sign({ ...inspection(), civilDate: "13/10/2026" } as Entry);
    const outcomes = await deliver(
      key.sign(unfit),
      key.sign(stranger),
      key.sign(nowhere),
      key.sign(good),
      altered,
      formless,
    );
    expect(outcomes.map(({ outcome }) => outcome)).toEqual([
      "refused",
      "retry-later",
      "retry-later",
      "sealed",
      "refused",
      "refused",
    ]);
    const pointers = outcomes.map((one) => ("problems" in one ? one.problems[0]?.pointer : null));
    expect(pointers[0]).toContain("/body/answers/hot");
    expect(pointers[1]).toContain("/body/checklist");
    expect(pointers[2]).toContain("/asset");
    expect(pointers[5]).toContain("/civilDate");
    expect((await history()).length).toBe(before + 1);
    expect(server.reported).toEqual([]);
  });

  it("delivered twice are sealed once, and an id used again for other content is refused", async () => {
    const entry = inspection();
    const [first] = await deliver(key.sign(entry));
    expect(first?.outcome).toBe("sealed");
    const [again] = await deliver(key.sign(entry));
    expect(again).toMatchObject({ outcome: "already", id: entry.id });
    const other = inspection({ id: entry.id, answers: { tap: "not-ok" } });
    const [refused] = await deliver(key.sign(other));
    expect(refused).toMatchObject({ outcome: "refused", id: entry.id });
    const kept = await read<HistoryEntry>(`/api/entries/${entry.id}`);
    expect(kept.entry).toEqual(entry);
  });

  it("move the due date, and what nobody measured moves nothing and is no pass", async () => {
    await deliver(key.sign(inspection()));
    const done = await read<typeof basin>("/api/assets/number:4047");
    expect(done.due[0]).toMatchObject({ lastDone: "2026-10-13", due: "2026-11-13" });
    server.now += 3_600_000;
    const half = inspection({ answers: { tap: "ok", cold: { value: 11, unit: "Cel" } } });
    const [sealed] = await deliver(key.sign(half));
    expect(sealed?.outcome).toBe("sealed");
    const entry = await read<HistoryEntry>(`/api/entries/${half.id}`);
    expect(entry.leaf.judgement).toMatchObject({ overall: "undecided", complete: false });
    const after = await read<typeof basin>("/api/assets/number:4047");
    expect(after.due[0]?.due).toBe("2026-11-13");
  });

  it("a delivery that is no delivery is refused as a whole", async () => {
    for (const body of [{}, { entries: [] }, { entries: [{ entry: {} }] }]) {
      const reply = await server.call("POST", "/api/entries", { as: dag, body });
      expect(reply.status).toBe(422);
    }
  });
});

describe("enrolling a device", () => {
  const enrol = (as: string, body: object) => server.call("POST", "/api/devices", { as, body });

  it("again with the same key changes nothing; another key or person is refused", async () => {
    const same = { device, key: key.key, label: "Dag's tablet" };
    expect((await enrol(dag, same)).status).toBe(204);
    expect((await enrol(dag, { ...same, key: createSigningKey().key })).status).toBe(409);
    expect((await enrol(await signIn(server, "isel"), same)).status).toBe(409);
  });

  it("a key that is no point of the curve is refused", async () => {
    const off = Buffer.alloc(65, 1);
    off[0] = 4;
    const body = { device: newId(), key: off.toString("base64url"), label: "x" };
    expect((await enrol(dag, body)).status).toBe(422);
  });
});
