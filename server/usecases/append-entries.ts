import type { BodyOf, Content, Entry, EntryFlag, EntryKind, Judgement } from "@roundbook/schemas";
import { among } from "../store/among.ts";
import { appendLog, keepContents, type Prepared } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { project } from "../store/projections/project.ts";
import { estate } from "../store/schema/estate.ts";
import { entries } from "../store/schema/log.ts";
import { numberKey } from "../store/words.ts";
import type { Context } from "./context.ts";
import { parseEntry } from "./parse-entry.ts";
import { prepareEntry } from "./prepare-entry.ts";
import { takenNumbers } from "./taken-numbers.ts";

/** An entry that the server makes for a person: it lacks what the server alone knows. */
export type Made = {
  [K in EntryKind]: {
    readonly kind: K;
    readonly asset: string | null;
    readonly author: string;
    readonly civilDate: string;
    readonly happenedAt: string | null;
    readonly body: BodyOf<K>;
    /** For what is to be appended once only, such as a row of a file. */
    readonly id?: string;
    /** Of a result received: its inspection judged again. */
    readonly judgement?: Judgement;
  };
}[EntryKind];

export interface Append {
  readonly entries: readonly Made[];
  readonly contents?: readonly Content[];
}
export interface Appended {
  readonly sealed: readonly { id: string; seq: number; hash: string }[];
  /** Ids that were sealed before: nothing was compared and nothing was added. */
  readonly already: readonly string[];
}

async function knownIds(tx: Db, made: readonly Made[]): Promise<Set<string>> {
  const given = made.flatMap(({ id }) => id ?? []);
  if (given.length === 0) return new Set();
  const rows = await tx.select({ id: entries.id }).from(entries).where(among(entries.id, given));
  return new Set(rows.map((row) => row.id));
}

async function serverDevice(tx: Db): Promise<string> {
  const [row] = await tx.select({ device: estate.serverDevice }).from(estate);
  if (row === undefined) throw new Error("the estate has not begun");
  return row.device;
}

/** The server judged it itself when it made the entry. */
const judgementOf = (entry: Entry, given: Judgement | undefined): Judgement | null =>
  entry.kind === "inspection" ? (entry.body.judgement as unknown as Judgement) : (given ?? null);

/** Appends in the caller's transaction; see `appendEntries`. */
export async function appendWithin(ctx: Context, tx: Db, append: Append): Promise<Appended> {
  const device = await serverDevice(tx);
  const seen = await knownIds(tx, append.entries);
  const registered = append.entries.flatMap((made) =>
    made.kind === "registered" ? made.body.number : [],
  );
  const taken = await takenNumbers(tx, registered);
  const receivedAt = ctx.clock();
  const already: string[] = [];
  const prepared: Prepared[] = [];
  for (const made of append.entries) {
    const { id = ctx.newId(), judgement, ...said } = made;
    if (seen.has(id)) {
      already.push(id);
      continue;
    }
    seen.add(id);
    const parsed = parseEntry({ ...said, id, device });
    if (!parsed.ok) throw new Error(`the server made no entry: ${JSON.stringify(parsed.problems)}`);
    const entry = parsed.value;
    const flags: EntryFlag[] = [];
    if (entry.kind === "registered") {
      const key = numberKey(entry.body.number);
      if (taken.has(key)) flags.push("duplicate-number");
      taken.add(key);
    }
    const rest = { flags, signature: null, deliveredBy: null, receivedAt };
    prepared.push(prepareEntry(entry, judgementOf(entry, judgement), rest));
  }
  if (prepared.length === 0) return { sealed: [], already };
  await keepContents(tx, append.contents ?? []);
  const sealed = await appendLog(tx, prepared);
  await project(tx, sealed);
  return {
    sealed: sealed.map(({ entry, leaf }) => ({ id: entry.id, seq: leaf.seq, hash: leaf.hash })),
    already,
  };
}

/**
 * Seals entries that the server makes, with their projections, in one transaction. What a user may
 * do is its caller's to check.
 * @throws Error for an entry that is not well formed: a fault of the program.
 */
export const appendEntries = (ctx: Context, append: Append): Promise<Appended> =>
  ctx.store.write((tx) => appendWithin(ctx, tx, append));
