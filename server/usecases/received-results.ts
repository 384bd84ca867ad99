import { type EntryOf, isSample, type SealedLeaf } from "@roundbook/schemas";
import { and, asc, eq } from "drizzle-orm";
import { among } from "../store/among.ts";
import type { Sealed } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { withResult } from "../store/projections/with-result.ts";
import { entries, entryDocs } from "../store/schema/log.ts";

export interface Received {
  readonly entry: EntryOf<"result-received">;
  readonly leaf: SealedLeaf;
}

const took = ({ body }: EntryOf<"inspection">): boolean =>
  Object.values(body.answers).some((answer) => isSample(answer as never));

/** What came for samples of these inspections, by inspection, in the order of the log. */
export async function readReceived(
  db: Db,
  inspections: readonly EntryOf<"inspection">[],
): Promise<ReadonlyMap<string, readonly Received[]>> {
  const received = new Map<string, Received[]>();
  const sampled = inspections.filter(took);
  if (sampled.length === 0) return received;
  const wanted = new Set(sampled.map(({ id }) => id));
  const assets = new Set(sampled.flatMap(({ asset }) => asset ?? []));
  const docs = await db
    .select({ entry: entryDocs.entry, leaf: entryDocs.leaf })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
    .where(and(among(entries.asset, assets), eq(entries.kind, "result-received")))
    .orderBy(asc(entries.seq));
  for (const doc of docs) {
    const one: Received = { entry: JSON.parse(doc.entry), leaf: JSON.parse(doc.leaf) };
    const { of } = one.entry.body;
    if (wanted.has(of)) received.set(of, [...(received.get(of) ?? []), one]);
  }
  return received;
}

/** The result since which the overall verdict is what it is after the last of them. */
export function sinceOf(results: readonly Received[]): number {
  const now = results.at(-1)?.leaf.judgement?.overall;
  const other = results.findLastIndex(({ leaf }) => leaf.judgement?.overall !== now);
  return results[other + 1]?.leaf.seq ?? 0;
}

/** What stands on the bottle that each result is of, by the result. */
export async function readLabels(
  db: Db,
  results: readonly EntryOf<"result-received">[],
): Promise<ReadonlyMap<string, string>> {
  const labels = new Map<string, string>();
  if (results.length === 0) return labels;
  const docs = await db
    .select({ id: entries.id, entry: entryDocs.entry })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
    .where(
      and(
        among(entries.id, new Set(results.map(({ body }) => body.of))),
        eq(entries.kind, "inspection"),
      ),
    );
  const taken = new Map(
    docs.map(({ id, entry }): [string, EntryOf<"inspection">] => [id, JSON.parse(entry)]),
  );
  for (const { id, body } of results) {
    const answer = taken.get(body.of)?.body.answers[body.point] as never;
    if (isSample(answer)) labels.set(id, (answer as { sample: string }).sample);
  }
  return labels;
}

/** Those of the inspections that still wait for the result of a sample. */
export async function readAwaited(db: Db, ids: ReadonlySet<string>): Promise<ReadonlySet<string>> {
  if (ids.size === 0) return new Set();
  const docs = await db
    .select({ entry: entryDocs.entry, leaf: entryDocs.leaf })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
    .where(and(among(entries.id, ids), eq(entries.kind, "inspection")));
  const sealed = docs.map((doc): { entry: EntryOf<"inspection">; leaf: SealedLeaf } => ({
    entry: JSON.parse(doc.entry),
    leaf: JSON.parse(doc.leaf),
  }));
  const received = await readReceived(
    db,
    sealed.map(({ entry }) => entry),
  );
  const waits = ({ entry, leaf }: (typeof sealed)[number]): boolean => {
    const judgement = received.get(entry.id)?.at(-1)?.leaf.judgement ?? leaf.judgement;
    return (judgement?.pending?.length ?? 0) > 0;
  };
  return new Set(sealed.filter(waits).map(({ entry }) => entry.id));
}

/** Inspections with the results that came for their samples. */
export async function withReceived(
  db: Db,
  inspections: readonly EntryOf<"inspection">[],
): Promise<readonly EntryOf<"inspection">[]> {
  const received = await readReceived(db, inspections);
  return inspections.map((inspection) =>
    (received.get(inspection.id) ?? []).reduce(
      (one, { entry }) => withResult(one, entry.body),
      inspection,
    ),
  );
}

/** The entry of an id as it was sealed; null when the log holds none. */
export async function findSealed(db: Db, id: string): Promise<Sealed | null> {
  const [doc] = await db
    .select({ entry: entryDocs.entry, leaf: entryDocs.leaf })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
    .where(eq(entries.id, id));
  return doc ? { entry: JSON.parse(doc.entry), leaf: JSON.parse(doc.leaf) } : null;
}
