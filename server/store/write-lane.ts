import { setImmediate, setTimeout } from "node:timers/promises";
import { isBusy } from "./busy.ts";
import type { Connection } from "./connect.ts";
import type { Db } from "./db.ts";

/** Does `work` inside a transaction and resolves once it is committed. It may be run again. */
export type Write = <T>(work: (tx: Db) => Promise<T>) => Promise<T>;

interface Unit {
  readonly work: (tx: Db) => Promise<unknown>;
  readonly resolve: (value: unknown) => void;
  readonly reject: (error: unknown) => void;
}
type Outcome =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly error: unknown };

const UNITS_AT_ONCE = 64;
/** Pauses before each further attempt: about six seconds in all. */
const PAUSES = [10, 20, 50, 100, 250, 500, 1000, 2000, 2000] as const;

const settle = async (work: () => Promise<unknown>): Promise<Outcome> => {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    if (isBusy(error)) throw error;
    return { ok: false, error };
  }
};

/**
 * The only way to write. Waiting work is grouped into one transaction with a savepoint each: one
 * failing unit rolls back alone, and one commit serves them all. After SQLITE_BUSY the connection
 * loses later writes that it acknowledges, so it is dropped and the group is run again.
 */
export function openLane(connection: Connection): { write: Write; idle(): Promise<void> } {
  const queue: Unit[] = [];
  let draining: Promise<void> | null = null;

  const runGroup = (group: readonly Unit[]): Promise<readonly Outcome[]> =>
    connection.db.transaction(async (tx) => {
      const [only] = group;
      // Alone, a unit needs no savepoint: its failure rolls the transaction back.
      if (only !== undefined && group.length === 1)
        return [{ ok: true, value: await only.work(tx) }];
      const outcomes: Outcome[] = [];
      for (const unit of group) outcomes.push(await settle(() => tx.transaction(unit.work)));
      return outcomes;
    });

  const commit = async (group: readonly Unit[]): Promise<void> => {
    let lost = false;
    for (let attempt = 0; ; attempt++) {
      try {
        if (lost) await connection.reconnect();
        const outcomes = await runGroup(group);
        group.forEach((unit, position) => {
          const outcome = outcomes[position];
          if (outcome?.ok) unit.resolve(outcome.value);
          else unit.reject(outcome?.error);
        });
        return;
      } catch (error) {
        const pause = PAUSES[attempt];
        lost = isBusy(error);
        if (!lost || pause === undefined) {
          if (lost) await connection.reconnect().catch(() => undefined);
          for (const unit of group) unit.reject(error);
          return;
        }
        await setTimeout(pause);
      }
    }
  };

  const drain = async (): Promise<void> => {
    // A macrotask first: what arrives in the same turn joins the group, and memory is let go.
    for (await setImmediate(); queue.length > 0; await setImmediate()) {
      await commit(queue.splice(0, UNITS_AT_ONCE));
    }
    draining = null;
  };

  const write: Write = (work) =>
    new Promise((resolve, reject) => {
      // The promise of each unit is typed by its caller; the queue holds units of every type.
      queue.push({ work, resolve: resolve as (value: unknown) => void, reject });
      draining ??= drain();
    });
  return { write, idle: async () => void (await draining) };
}
