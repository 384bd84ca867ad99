import {
  appendLeaf,
  type Content,
  type Entry,
  type EntryFlag,
  type EntryKind,
  type Frontier,
  fromHex,
  hashLeaf,
  type Judgement,
  type KnownTexts,
  leafText,
  parseCivilDate,
  type SealedLeaf,
  toHex,
} from "@roundbook/schemas";
import { sql } from "drizzle-orm";
import type { Db } from "./db.ts";
import { insertRows, insertTexts } from "./insert-rows.ts";
import { contents, entries, entryDocs, logState } from "./schema/log.ts";
import { sha256 } from "./sha256.ts";

/** An entry that has been checked, ready for its place in the log. */
export interface Prepared {
  readonly entry: Entry;
  /** RFC 8785 canonical form and its SHA-256 in hex. */
  readonly canonical: string;
  readonly hash: string;
  readonly signature: string | null;
  readonly deliveredBy: string | null;
  readonly judgement: Judgement | null;
  /** Canonical forms of parts, made already. */
  readonly texts: KnownTexts | undefined;
  readonly engine: string;
  readonly flags: readonly EntryFlag[];
  /** Milliseconds UTC. */
  readonly receivedAt: number;
}

export interface Sealed<K extends EntryKind = EntryKind> {
  readonly entry: Entry & { readonly kind: K };
  readonly leaf: SealedLeaf;
}

export const instantMs = (at: string | null): number | null =>
  at === null ? null : Date.parse(at);

/** @throws RangeError for a day that no month has: callers have checked it. */
export function dayOf(iso: string): number {
  const day = parseCivilDate(iso);
  if (day === undefined) throw new RangeError(`${iso} is no civil date`);
  return day;
}

export async function readLogState(tx: Db): Promise<{ size: number; frontier: Frontier }> {
  const [row] = await tx.select().from(logState);
  if (row === undefined) throw new Error("the log has lost its state");
  const nodes: readonly [number, string][] = JSON.parse(row.frontier);
  return { size: row.size, frontier: nodes.map(([level, hex]) => ({ level, hash: fromHex(hex) })) };
}

/**
 * Gives each entry its sequence number and Merkle leaf, and writes them with the new state of the
 * log in the caller's transaction. Projections are the caller's next step.
 */
export async function appendLog(tx: Db, prepared: readonly Prepared[]): Promise<readonly Sealed[]> {
  const state = await readLogState(tx);
  let { frontier } = state;
  const sealed: Sealed[] = [];
  const heads: (typeof entries.$inferInsert)[] = [];
  const docs: (typeof entryDocs.$inferInsert)[] = [];
  prepared.forEach((one, position) => {
    const { entry, hash, judgement, engine, flags } = one;
    const seq = state.size + 1 + position;
    const receivedAt = new Date(one.receivedAt).toISOString();
    const leaf: SealedLeaf = { seq, hash, receivedAt, judgement, engine, flags };
    const text = leafText(leaf, one.texts);
    frontier = appendLeaf(frontier, hashLeaf(Buffer.from(text), sha256), sha256);
    sealed.push({ entry, leaf });
    docs.push({
      seq,
      entry: one.canonical,
      leaf: text,
      signature: one.signature,
    });
    heads.push({
      seq,
      id: entry.id,
      kind: entry.kind,
      asset: entry.asset,
      author: entry.author,
      device: entry.device,
      civilDate: dayOf(entry.civilDate),
      at: instantMs(entry.happenedAt) ?? -1,
      receivedAt: one.receivedAt,
      hash,
      flags: flags.join(","),
      deliveredBy: one.deliveredBy,
    });
  });
  await insertRows(tx, entries, heads);
  await insertTexts(tx, entryDocs, docs);
  const nodes = JSON.stringify(frontier.map(({ level, hash }) => [level, toHex(hash)]));
  await tx.update(logState).set({ size: state.size + prepared.length, frontier: nodes });
  return sealed;
}

/** Keeps texts beside the log. A commitment once known keeps its text, or stays erased. */
export async function keepContents(tx: Db, kept: readonly Content[]): Promise<void> {
  if (kept.length === 0) return;
  const rows = JSON.stringify(kept.map(({ commit, salt, text }) => [commit, salt, text]));
  await tx.run(
    sql`insert or ignore into ${contents} (commit_hash, salt, text)
        select value->>0, value->>1, value->>2 from json_each(${rows})`,
  );
}
