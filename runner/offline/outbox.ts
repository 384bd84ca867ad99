import { countsAsDone, type Entry, type EntryOutcome, type Judgement } from "@roundbook/schemas";
import type { DeviceDatabase, OutboxRow, SentRow } from "./database.ts";

/**
 * Puts a finished entry into the outbox and ends its draft in one transaction, on disk before it
 * resolves: at every moment the work is in exactly one of the two.
 */
export const finish = async (database: DeviceDatabase, row: OutboxRow): Promise<void> => {
  const transaction = database.transaction(["outbox", "drafts"], "readwrite", {
    durability: "strict",
  });
  await Promise.all([
    transaction.objectStore("outbox").add(row),
    row.draft ? transaction.objectStore("drafts").delete(row.draft.key) : undefined,
    transaction.done,
  ]);
};

/**
 * Takes a waiting entry back to its draft. Resolves to false when it is no longer waiting: what
 * was sent is only ever corrected by another entry.
 */
export const takeBack = async (database: DeviceDatabase, id: string): Promise<boolean> => {
  const transaction = database.transaction(["outbox", "drafts"], "readwrite", {
    durability: "strict",
  });
  const row = await transaction.objectStore("outbox").get(id);
  if (!row?.draft || row.state === "refused") {
    await transaction.done;
    return false;
  }
  await Promise.all([
    transaction.objectStore("drafts").put(row.draft),
    transaction.objectStore("outbox").delete(id),
    transaction.done,
  ]);
  return true;
};

/** Oldest first: ids are UUIDv7, so their order is the order in which they were made. */
export const listOutbox = (database: DeviceDatabase): Promise<OutboxRow[]> =>
  database.getAll("outbox");

export const listSent = (database: DeviceDatabase, since: number): Promise<SentRow[]> =>
  database.getAllFromIndex("sent", "sentAt", IDBKeyRange.lowerBound(since));

/** Stable id of the checklist an entry is about. */
export const checklistOf = (entry: Entry): string | null =>
  entry.kind === "inspection" || entry.kind === "not-completed" ? entry.body.checklist.id : null;

/** Whether an entry is an inspection that moves a due date. */
export const entryCounts = (entry: Entry): boolean =>
  entry.kind === "inspection" && countsAsDone(entry.body.judgement as unknown as Judgement);

/** Writes down what the server said of one entry. Only its acknowledgement lets an entry go. */
export const settle = async (
  database: DeviceDatabase,
  outcome: EntryOutcome,
  now: number,
): Promise<void> => {
  const transaction = database.transaction(["outbox", "sent"], "readwrite", {
    durability: "strict",
  });
  const outbox = transaction.objectStore("outbox");
  const row = await outbox.get(outcome.id);
  if (row) {
    switch (outcome.outcome) {
      case "sealed":
      case "already":
        await transaction.objectStore("sent").put({
          id: row.id,
          kind: row.signed.entry.kind,
          asset: row.signed.entry.asset,
          checklist: checklistOf(row.signed.entry),
          counts: entryCounts(row.signed.entry),
          doneOn: row.signed.entry.civilDate,
          seq: outcome.seq,
          sentAt: now,
          summary: row.summary,
        });
        await outbox.delete(row.id);
        break;
      case "retry-later":
        await outbox.put({ ...row, state: "later", problems: outcome.problems });
        break;
      case "refused":
        await outbox.put({ ...row, state: "refused", problems: outcome.problems });
        break;
    }
  }
  await transaction.done;
};
