import "fake-indexeddb/auto";
import { expect, test } from "vitest";
import { openDevice } from "./database.ts";
import { makeRoom, withRoom } from "./room.ts";

const NOW = Date.parse("2026-10-13T09:00:00Z");
const DAY = 86_400_000;

async function kept(name: string) {
  const database = await openDevice(name);
  const photo = (sha256: string, sent: boolean, takenAt: number) =>
    database.put("evidence", { sha256, blob: new Blob([sha256]), sent, takenAt });
  await photo("old-sent", true, NOW - 20 * DAY);
  await photo("old-unsent", false, NOW - 20 * DAY);
  await photo("new-sent", true, NOW - DAY);
  await database.put("drafts", { key: "a:b", asset: "a", changedAt: 1 } as never);
  await database.put("outbox", { id: "1", state: "waiting" } as never);
  await database.put("sent", { id: "2", sentAt: NOW - 20 * DAY } as never);
  await database.put("sent", { id: "3", sentAt: NOW - DAY } as never);
  return database;
}

test("room is made of what the server has acknowledged, the older first; drafts, waiting entries and unsent photos stay", async () => {
  const database = await kept("room-1");
  expect(await makeRoom(database, NOW, false)).toBe(2);
  expect(await database.getAllKeys("evidence")).toEqual(["new-sent", "old-unsent"]);
  expect(await database.getAllKeys("sent")).toEqual(["3"]);
  expect(await makeRoom(database, NOW, true)).toBe(2);
  expect(await database.getAllKeys("evidence")).toEqual(["old-unsent"]);
  expect(await database.count("drafts")).toBe(1);
  expect(await database.count("outbox")).toBe(1);
});

test("what did not fit is tried once more after room was made, and then told", async () => {
  const database = await kept("room-2");
  const full = new DOMException("full", "QuotaExceededError");
  let tries = 0;
  const once = async () => {
    tries += 1;
    if (tries === 1) throw full;
    return "kept";
  };
  expect(await withRoom(database, () => NOW, once)).toBe("kept");
  expect(await database.getAllKeys("evidence")).toEqual(["old-unsent"]);
  const never = () => Promise.reject(full);
  await expect(withRoom(database, () => NOW, never)).rejects.toBe(full);
  const broken = new Error("broken");
  await expect(
    withRoom(
      database,
      () => NOW,
      () => Promise.reject(broken),
    ),
  ).rejects.toBe(broken);
});
