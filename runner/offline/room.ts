import type { DeviceDatabase } from "./database.ts";

/** What the server has acknowledged is kept here only to be looked at. */
const DAYS_SENT = 7;
const DAY_MS = 86_400_000;

export const isFull = (error: unknown): boolean =>
  error instanceof DOMException && error.name === "QuotaExceededError";

/**
 * Clears what is safe in the server's logbook: photos that it has acknowledged, and the list of what
 * was sent before the last week, or all of it where `all`. Drafts, waiting entries and unsent photos
 * are never touched. Gives how many rows went.
 */
export async function makeRoom(
  database: DeviceDatabase,
  now: number,
  all: boolean,
): Promise<number> {
  const transaction = database.transaction(["evidence", "sent"], "readwrite");
  const evidence = transaction.objectStore("evidence");
  const sent = transaction.objectStore("sent");
  const before = all ? now : now - DAYS_SENT * DAY_MS;
  let cleared = 0;
  for (let at = await evidence.openCursor(); at; at = await at.continue()) {
    if (!at.value.sent || at.value.takenAt > before) continue;
    await at.delete();
    cleared += 1;
  }
  const old = IDBKeyRange.upperBound(before);
  for (let at = await sent.index("sentAt").openCursor(old); at; at = await at.continue()) {
    await at.delete();
    cleared += 1;
  }
  await transaction.done;
  return cleared;
}

/**
 * Runs `work`; where the device is full, once more with room made.
 * @throws the same error when that is not enough.
 */
export async function withRoom<T>(
  database: DeviceDatabase,
  now: () => number,
  work: () => Promise<T>,
): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!isFull(error)) throw error;
    await makeRoom(database, now(), true);
    return work();
  }
}
