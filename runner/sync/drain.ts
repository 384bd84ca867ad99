import { ENTRIES_AT_ONCE, type PostEntriesReply } from "@roundbook/schemas";
import type { DeviceDatabase, OutboxRow } from "../offline/database.ts";
import { markEvidenceSent, unsentEvidence } from "../offline/evidence.ts";
import { listOutbox, settle } from "../offline/outbox.ts";
import { Refusal, send, sendJson, Unreachable } from "./client.ts";

export type DrainResult = "done" | "unreachable" | "signed-out" | "failed";

/** Keeps a request below the server's limit whatever the entries weigh. */
const BATCH_BYTES = 2_000_000;

const batches = function* (rows: readonly OutboxRow[]): Generator<OutboxRow[]> {
  let batch: OutboxRow[] = [];
  let bytes = 0;
  for (const row of rows) {
    const size = JSON.stringify(row.signed).length;
    if (batch.length === ENTRIES_AT_ONCE || (batch.length > 0 && bytes + size > BATCH_BYTES)) {
      yield batch;
      batch = [];
      bytes = 0;
    }
    batch.push(row);
    bytes += size;
  }
  if (batch.length > 0) yield batch;
};

/** A request the server will not read as a whole says nothing of the entries that are sound. */
const UNREADABLE = new Set([400, 413, 422]);

/**
 * Sends one batch. When the server cannot read it, halves it until the entry at fault stands
 * alone: that one is shown to a person, the others go through.
 */
const sendBatch = async (
  database: DeviceDatabase,
  batch: readonly OutboxRow[],
  now: () => number,
): Promise<void> => {
  try {
    const reply = await sendJson<PostEntriesReply>("POST", "/api/entries", {
      entries: batch.map((row) => row.signed),
    });
    for (const outcome of reply.outcomes) await settle(database, outcome, now());
  } catch (error) {
    if (!(error instanceof Refusal) || !UNREADABLE.has(error.status)) throw error;
    const [only] = batch;
    if (batch.length === 1 && only) {
      await settle(database, { id: only.id, outcome: "refused", problems: error.problems }, now());
      return;
    }
    const half = Math.ceil(batch.length / 2);
    await sendBatch(database, batch.slice(0, half), now);
    await sendBatch(database, batch.slice(half), now);
  }
};

const drainEntries = async (database: DeviceDatabase, now: () => number): Promise<void> => {
  const sendable = (await listOutbox(database)).filter((row) => row.state !== "refused");
  for (const batch of batches(sendable)) await sendBatch(database, batch, now);
};

const drainEvidence = async (database: DeviceDatabase): Promise<void> => {
  for (const row of await unsentEvidence(database)) {
    try {
      await send(`/api/evidence/${row.sha256}`, {
        method: "PUT",
        headers: { "content-type": row.blob.type || "image/jpeg" },
        body: row.blob,
      });
      await markEvidenceSent(database, row.sha256);
    } catch (error) {
      // A photo the server will not take stays here, unsent, and holds up no other.
      if (!(error instanceof Refusal) || !UNREADABLE.has(error.status)) throw error;
    }
  }
};

const outcomeOf = (error: unknown): DrainResult => {
  if (error instanceof Unreachable) return "unreachable";
  if (error instanceof Refusal) return error.status === 401 ? "signed-out" : "failed";
  throw error;
};

/**
 * Sends what waits, entries before photos, one tab at a time. Nothing leaves the device's keeping
 * before the server has acknowledged that very id.
 */
export const drain = (database: DeviceDatabase, now: () => number): Promise<DrainResult> =>
  navigator.locks.request("roundbook-drain", async () => {
    try {
      await drainEntries(database, now);
      await drainEvidence(database);
      return "done";
    } catch (error) {
      return outcomeOf(error);
    }
  });
