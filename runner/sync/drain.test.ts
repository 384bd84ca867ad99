import "fake-indexeddb/auto";
import type { EntryOutcome, SignedEntry } from "@roundbook/schemas";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type DeviceDatabase, openDevice } from "../offline/database.ts";
import { finish, listOutbox } from "../offline/outbox.ts";
import { drain } from "./drain.ts";

let database: DeviceDatabase;
let turn = 0;
const now = () => 9;

beforeEach(async () => {
  turn += 1;
  database = await openDevice(`drain-${turn}`);
  // One tab in a test: the lock is always free.
  vi.stubGlobal("navigator", {
    locks: { request: (_: string, work: () => unknown) => work() },
  });
});
afterEach(() => vi.unstubAllGlobals());

const put = async (...ids: string[]) => {
  for (const id of ids)
    await finish(database, {
      id,
      signed: {
        entry: { id, kind: "inspection", body: { checklist: { id: "l" }, judgement: {} } },
      } as unknown as SignedEntry,
      person: "p",
      state: "waiting",
      problems: [],
      madeAt: 1,
      summary: { number: "1", description: "", words: "", overall: null },
      draft: null,
    });
};

/** A server that answers each posted batch as `answer` says. */
const serve = (answer: (ids: string[]) => Response | Promise<Response>) => {
  const batches: string[][] = [];
  vi.stubGlobal("fetch", async (_: string, init: RequestInit) => {
    const body: { entries: { entry: { id: string } }[] } = JSON.parse(String(init.body));
    const ids = body.entries.map(({ entry }) => entry.id);
    batches.push(ids);
    return answer(ids);
  });
  return batches;
};

const sealed = (ids: string[]) => {
  const outcomes = ids.map((id, at) => ({ id, outcome: "sealed", seq: at + 1 }) as EntryOutcome);
  return Response.json({ outcomes });
};
const waiting = async () => (await listOutbox(database)).map(({ id, state }) => `${id} ${state}`);

test("an acknowledgement lost on the way keeps the entry, and the next drain clears it", async () => {
  await put("a", "b");
  let lost = true;
  serve((ids) => {
    if (!lost) return sealed(ids);
    lost = false;
    throw new TypeError("network");
  });
  expect(await drain(database, now)).toBe("unreachable");
  expect(await waiting()).toEqual(["a waiting", "b waiting"]);
  expect(await drain(database, now)).toBe("done");
  expect(await waiting()).toEqual([]);
});

test("a session that ends in the middle loses nothing", async () => {
  await put(...Array.from({ length: 60 }, (_, at) => `e${String(at).padStart(2, "0")}`));
  let batch = 0;
  serve((ids) => {
    batch += 1;
    return batch === 1 ? sealed(ids) : Response.json({ code: "signed-out" }, { status: 401 });
  });
  expect(await drain(database, now)).toBe("signed-out");
  expect(await waiting()).toHaveLength(10);
});

test("one entry the server cannot read does not hold up the others", async () => {
  await put("a", "b", "c", "d");
  const problems = [{ pointer: "/entries/0", code: "wrong-type", params: {} }];
  serve((ids) =>
    ids.includes("c") ? Response.json({ code: "bad", problems }, { status: 422 }) : sealed(ids),
  );
  expect(await drain(database, now)).toBe("done");
  expect(await waiting()).toEqual(["c refused"]);
});

test("a refused entry is not sent again by itself", async () => {
  await put("a");
  const batches = serve(() => Response.json({ code: "bad", problems: [] }, { status: 422 }));
  await drain(database, now);
  await drain(database, now);
  expect(batches).toEqual([["a"]]);
});

test("an answer of something on the way is no verdict of the server", async () => {
  await put("a");
  serve(() => new Response("away", { status: 503 }));
  expect(await drain(database, now)).toBe("unreachable");
  expect(await waiting()).toEqual(["a waiting"]);
});

test("a photo the server will not take holds up no other and stays on the device", async () => {
  for (const sha256 of ["a", "b"])
    await database.put("evidence", { sha256, blob: new Blob([sha256]), sent: false, takenAt: 1 });
  vi.stubGlobal("fetch", async (path: string) =>
    path.endsWith("/a")
      ? Response.json({ code: "hash-differs", problems: [] }, { status: 422 })
      : new Response(null, { status: 204 }),
  );
  expect(await drain(database, now)).toBe("done");
  const kept = await database.getAll("evidence");
  expect(kept.map(({ sha256, sent }) => [sha256, sent])).toEqual([
    ["a", false],
    ["b", true],
  ]);
});
