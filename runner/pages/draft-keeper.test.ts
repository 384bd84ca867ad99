import "fake-indexeddb/auto";
import { expect, test } from "vitest";
import { type DeviceDatabase, type Draft, openDevice } from "../offline/database.ts";
import { DraftKeeper } from "./draft-keeper.ts";

const draft = (changedAt: number) => ({ key: "a:b", changedAt }) as Draft;
const database = {} as DeviceDatabase;
const now = () => 0;

/** A store whose saves end when they are told to. */
const slowStore = () => {
  const saved: number[] = [];
  const waiting: (() => void)[] = [];
  const save = (_: DeviceDatabase, one: Draft) =>
    new Promise<void>((resolve) => {
      waiting.push(() => {
        saved.push(one.changedAt);
        resolve();
      });
    });
  return { saved, waiting, save };
};

test("a change begins to be saved at once, before anything else can happen to the page", () => {
  const store = slowStore();
  new DraftKeeper(database, now, store.save).change(draft(1));
  expect(store.waiting).toHaveLength(1);
});

test("every state is handed over at once, in order: none waits in the page for the one before", async () => {
  const store = slowStore();
  const keeper = new DraftKeeper(database, now, store.save);
  for (const at of [1, 2, 3]) keeper.change(draft(at));
  expect(store.waiting).toHaveLength(3);
  const flushed = keeper.flush();
  for (const end of store.waiting) end();
  await flushed;
  expect(store.saved).toEqual([1, 2, 3]);
  await keeper.flush();
  expect(store.waiting).toHaveLength(3);
});

test("states that were handed over are in the store in their order, though nobody waited", async () => {
  const opened = await openDevice("keeper-order");
  const keeper = new DraftKeeper(opened, now);
  for (let at = 1; at <= 50; at += 1) keeper.change(draft(at));
  expect(await opened.get("drafts", "a:b")).toEqual(draft(50));
});

test("once the draft has become an entry nothing saves it again", async () => {
  const store = slowStore();
  const keeper = new DraftKeeper(database, now, store.save);
  await keeper.end();
  keeper.change(draft(1));
  expect(store.waiting).toHaveLength(0);
  keeper.resume();
  keeper.change(draft(2));
  expect(store.waiting).toHaveLength(1);
});

test("a draft that the device has no room for is held, told, and kept with the next change", async () => {
  const opened = await openDevice("keeper-full");
  let full = true;
  const saved: number[] = [];
  const keeper = new DraftKeeper(opened, now, async (_, one) => {
    if (full) throw new DOMException("full", "QuotaExceededError");
    saved.push(one.changedAt);
  });
  const told: string[] = [];
  keeper.onKeeping = (keeping) => told.push(keeping);
  keeper.change(draft(1));
  await keeper.flush();
  expect(told).toEqual(["full"]);
  expect(keeper.unkept).toEqual(draft(1));
  keeper.change(draft(2));
  await keeper.flush();
  expect(keeper.unkept).toEqual(draft(2));
  full = false;
  await keeper.flush();
  expect([saved, told, keeper.unkept]).toEqual([[2], ["full", "kept"], undefined]);
});

test("a store that fails for another reason is told too, and nothing is thrown away", async () => {
  const keeper = new DraftKeeper(database, now, () => Promise.reject(new Error("closed")));
  const told: string[] = [];
  keeper.onKeeping = (keeping) => told.push(keeping);
  keeper.change(draft(1));
  await keeper.flush();
  expect([told, keeper.unkept]).toEqual([["failed"], draft(1)]);
});

test("a draft that could not be kept is not kept after it has become an entry", async () => {
  let full = true;
  const saved: number[] = [];
  const opened = await openDevice("keeper-ended");
  const keeper = new DraftKeeper(opened, now, async (_, one) => {
    if (full) throw new DOMException("full", "QuotaExceededError");
    saved.push(one.changedAt);
  });
  keeper.change(draft(1));
  await keeper.end();
  full = false;
  await keeper.flush();
  expect(saved).toEqual([]);
  keeper.resume();
  await keeper.flush();
  expect(saved).toEqual([1]);
});
