import type { Answers, EntryOf } from "@roundbook/schemas";
import { and, asc, desc, eq, sql } from "drizzle-orm";
import { among } from "../store/among.ts";
import { dayOf, instantMs } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { results } from "../store/schema/due.ts";
import { entries, entryDocs } from "../store/schema/log.ts";
import { withReceived } from "./received-results.ts";

type Inspection = Pick<EntryOf<"inspection">, "id" | "asset" | "civilDate" | "happenedAt" | "body">;

const done = and(eq(results.counts, true), eq(results.broughtForward, false));

async function answersOf(db: Db, ids: ReadonlySet<string>): Promise<ReadonlyMap<string, Answers>> {
  const docs = await db
    .select({ entry: entryDocs.entry })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq))
    .where(among(entries.id, ids));
  const sealed = docs.map(({ entry }): EntryOf<"inspection"> => JSON.parse(entry));
  return new Map(
    (await withReceived(db, sealed)).map(({ id, body }) => [id, body.answers as Answers]),
  );
}

/**
 * Answers of the last complete inspection of the asset by the same checklist before this one, by
 * civil date, instant and id, among what the log holds now; undefined when there is none.
 */
export async function previousAnswers(db: Db, before: Inspection): Promise<Answers | undefined> {
  if (before.asset === null) return undefined;
  const at = sql`coalesce(${results.at}, -1)`;
  const [on, when] = [dayOf(before.civilDate), instantMs(before.happenedAt) ?? -1];
  const [row] = await db
    .select({ entry: results.entry })
    .from(results)
    .where(
      and(
        eq(results.asset, before.asset),
        eq(results.checklist, before.body.checklist.id),
        done,
        sql`(${results.on}, ${at}, ${results.entry}) < (${on}, ${when}, ${before.id})`,
      ),
    )
    .orderBy(desc(results.on), desc(at), desc(results.entry))
    .limit(1);
  return row && (await answersOf(db, new Set([row.entry]))).get(row.entry);
}

/** The same for what would be inspected next: by asset and checklist, `lastOf`. */
export async function lastAnswers(
  db: Db,
  assets: ReadonlySet<string>,
  checklists: ReadonlySet<string>,
): Promise<ReadonlyMap<string, Answers>> {
  if (assets.size === 0 || checklists.size === 0) return new Map();
  const rows = await db
    .select({ entry: results.entry, asset: results.asset, checklist: results.checklist })
    .from(results)
    .where(and(among(results.asset, assets), among(results.checklist, checklists), done))
    .orderBy(asc(results.on), asc(sql`coalesce(${results.at}, -1)`), asc(results.entry));
  const last = new Map(rows.map((row) => [lastOf(row.asset, row.checklist), row.entry]));
  const answers = await answersOf(db, new Set(last.values()));
  return new Map(
    [...last].flatMap(([key, entry]) => {
      const found = answers.get(entry);
      return found === undefined ? [] : [[key, found] as const];
    }),
  );
}

export const lastOf = (asset: string, checklist: string): string => `${asset} ${checklist}`;
