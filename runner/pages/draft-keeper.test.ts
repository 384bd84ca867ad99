import { expect, test } from "vitest";
import type { DeviceDatabase, Draft } from "../offline/database.ts";
import { DraftKeeper } from "./draft-keeper.ts";

const draft = (changedAt: number) => ({ key: "a:b", changedAt }) as Draft;
const database = {} as DeviceDatabase;

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
  new DraftKeeper(database, store.save).change(draft(1));
  expect(store.waiting).toHaveLength(1);
});

test("while one save runs only the newest state waits, and it is saved last", async () => {
  const store = slowStore();
  const keeper = new DraftKeeper(database, store.save);
  for (const at of [1, 2, 3]) keeper.change(draft(at));
  const flushed = keeper.flush();
  store.waiting[0]?.();
  await expect.poll(() => store.waiting.length).toBe(2);
  store.waiting[1]?.();
  await flushed;
  expect(store.saved).toEqual([1, 3]);
});

test("once the draft has become an entry nothing saves it again", async () => {
  const store = slowStore();
  const keeper = new DraftKeeper(database, store.save);
  await keeper.end();
  keeper.change(draft(1));
  expect(store.waiting).toHaveLength(0);
  keeper.resume();
  keeper.change(draft(2));
  expect(store.waiting).toHaveLength(1);
});
