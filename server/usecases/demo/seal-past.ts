import type { Judgement, SignedEntry } from "@roundbook/schemas";
import { appendLog } from "../../store/append-log.ts";
import { project } from "../../store/projections/project.ts";
import type { Context } from "../context.ts";
import { prepareEntry } from "../prepare-entry.ts";

/** An entry of the past with what its sealing adds. */
export interface PastEntry {
  readonly signed: SignedEntry;
  readonly judgement: Judgement | null;
  readonly deliveredBy: string;
  /** Milliseconds UTC. */
  readonly receivedAt: number;
}

const AT_ONCE = 200;

/**
 * Seals a year and a half in a few transactions, each entry as if received on its own day. Devices'
 * deliveries are checked one by one and take four times as long; what is sealed here is made and
 * signed a few lines away, and the tests verify every signature and judge every answer again.
 */
export async function sealPast(ctx: Context, past: readonly PastEntry[]): Promise<void> {
  for (let from = 0; from < past.length; from += AT_ONCE) {
    const prepared = past
      .slice(from, from + AT_ONCE)
      .map(({ signed: { entry, signature }, judgement, deliveredBy, receivedAt }) =>
        prepareEntry(entry, judgement, { flags: [], signature, deliveredBy, receivedAt }),
      );
    await ctx.store.write(async (tx) => project(tx, await appendLog(tx, prepared)));
  }
}
