import type { HistoryEntry, Page, SiteHistory } from "@roundbook/schemas";
import { and, desc, eq, gt, gte, lt, lte, sql } from "drizzle-orm";
import { among } from "../store/among.ts";
import { readLogState } from "../store/append-log.ts";
import type { Db } from "../store/db.ts";
import { contents, entries, entryDocs } from "../store/schema/log.ts";
import { assets, people } from "../store/schema/register.ts";
import { commitmentsIn } from "./commitments-in.ts";
import type { Context } from "./context.ts";
import { decodeCursor, pageOf, pageSize } from "./cursor.ts";
import { readCovered } from "./read-covered.ts";
import { dayOfQuery } from "./read-due.ts";
import { readLabels, readReceived, sinceOf } from "./received-results.ts";

interface Paging {
  readonly cursor?: string;
  readonly limit?: number;
}
interface Doc {
  readonly entry: string;
  readonly leaf: string;
}

const selectDocs = (db: Db) =>
  db
    .select({
      seq: entries.seq,
      civilDate: entries.civilDate,
      at: entries.at,
      entry: entryDocs.entry,
      leaf: entryDocs.leaf,
    })
    .from(entries)
    .innerJoin(entryDocs, eq(entryDocs.seq, entries.seq));

/** Adds what came since for the samples of inspections. */
async function historyOf(db: Db, docs: readonly Doc[]): Promise<HistoryEntry[]> {
  const rows = await namedHistory(db, docs);
  const inspections = rows.flatMap(({ entry }) => (entry.kind === "inspection" ? entry : []));
  const received = await readReceived(db, inspections);
  const labels = await readLabels(
    db,
    rows.flatMap(({ entry }) => (entry.kind === "result-received" ? entry : [])),
  );
  const stoodFor = await readCovered(
    db,
    inspections.map(({ id }) => id),
  );
  return rows.map((plain) => {
    const sample = labels.get(plain.entry.id);
    if (sample !== undefined) return { ...plain, sample };
    const covered = stoodFor.get(plain.entry.id);
    const row = covered === undefined ? plain : { ...plain, covered };
    const results = received.get(row.entry.id) ?? [];
    const judgement = results.at(-1)?.leaf.judgement ?? null;
    if (judgement === null) return row;
    const entries = results.map(({ entry }) => entry);
    return { ...row, received: { entries, judgement, since: sinceOf(results) } };
  });
}

/** Adds the names and texts that still stand beside the log. */
async function namedHistory(db: Db, docs: readonly Doc[]): Promise<HistoryEntry[]> {
  const read = docs.map(
    ({ entry, leaf }): Pick<HistoryEntry, "entry" | "leaf"> => ({
      entry: JSON.parse(entry),
      leaf: JSON.parse(leaf),
    }),
  );
  const wanted = read.map(({ entry }) => commitmentsIn(entry.body));
  const authors = new Set(read.map(({ entry }) => entry.author));
  const names = new Map<string, string>();
  for (const row of await db
    .select({ id: people.id, name: contents.text })
    .from(people)
    .innerJoin(contents, eq(contents.commit, people.nameCommit))
    .where(among(people.id, authors)))
    names.set(row.id, row.name);
  const texts = new Map<string, string>();
  const commits = new Set(wanted.flat());
  if (commits.size > 0) {
    for (const row of await db.select().from(contents).where(among(contents.commit, commits)))
      texts.set(row.commit, row.text);
  }
  const called = new Map<string, { number: string; description: string }>();
  const assetIds = new Set(
    read.flatMap(({ entry }) => (entry.asset === null ? [] : [entry.asset])),
  );
  for (const { id, number, description } of await db
    .select({ id: assets.id, number: assets.number, description: assets.description })
    .from(assets)
    .where(among(assets.id, assetIds)))
    called.set(id, { number, description });
  return read.map(({ entry, leaf }, position) => ({
    entry,
    leaf,
    authorName: names.get(entry.author) ?? "",
    about: entry.asset === null ? null : (called.get(entry.asset) ?? null),
    contents: Object.fromEntries(
      (wanted[position] ?? []).flatMap((commit) => {
        const text = texts.get(commit);
        return text === undefined ? [] : [[commit, text] as const];
      }),
    ),
  }));
}

/** Newest first by civil date, instant and place in the log. */
export async function readHistory(
  ctx: Context,
  asset: string,
  asked: Paging = {},
): Promise<Page<HistoryEntry>> {
  const { db } = ctx.store;
  const size = pageSize(asked.limit);
  const { civilDate, at, seq } = entries;
  const before = asked.cursor && decodeCursor(asked.cursor, ["number", "number", "number"]);
  const docs = await selectDocs(db)
    .where(
      and(
        eq(entries.asset, asset),
        before
          ? sql`(${civilDate}, ${at}, ${seq}) < (${before[0]}, ${before[1]}, ${before[2]})`
          : undefined,
      ),
    )
    .orderBy(desc(civilDate), desc(at), desc(seq))
    .limit(size + 1);
  const page = pageOf(
    docs,
    size,
    (doc) => [doc.civilDate, doc.at, doc.seq],
    (doc) => doc,
  );
  return { rows: await historyOf(db, page.rows), next: page.next };
}

/** Entries that one reading of a site's history looks at, and those that it gives. */
const LOOKED_AT = 20_000;
const SITE_PAGE = 200;

/**
 * Entries about the assets that are at a site, in the order of the log after a sequence number, of
 * civil dates from a day on. An inspection whose sample has got a result since is given again with
 * it. A page may be empty and not the last: `upTo` is where to go on.
 */
export async function readSiteHistory(
  ctx: Context,
  site: string,
  after: number,
  from: string,
): Promise<SiteHistory> {
  const { db } = ctx.store;
  const { size } = await readLogState(db);
  const last = Math.min(size, after + LOOKED_AT);
  const docs = await selectDocs(db)
    .innerJoin(assets, and(eq(assets.id, entries.asset), eq(assets.site, site)))
    .where(
      and(
        gt(entries.seq, after),
        lte(entries.seq, last),
        gte(entries.civilDate, dayOfQuery("from", from)),
      ),
    )
    .orderBy(entries.seq)
    .limit(SITE_PAGE);
  const found = await historyOf(db, docs);
  const had = new Set(found.map(({ entry }) => entry.id));
  const again = found.flatMap(({ entry }) =>
    entry.kind === "result-received" && !had.has(entry.body.of) ? entry.body.of : [],
  );
  const changed = await selectDocs(db).where(among(entries.id, again));
  const upTo = docs.length === SITE_PAGE ? (docs.at(-1)?.seq ?? last) : last;
  return {
    rows: [...found, ...(again.length === 0 ? [] : await historyOf(db, changed))],
    upTo,
    more: upTo < size,
  };
}

/** The whole log, the newest sealed first. */
export async function readLogbook(ctx: Context, asked: Paging = {}): Promise<Page<HistoryEntry>> {
  const { db } = ctx.store;
  const size = pageSize(asked.limit);
  const before = asked.cursor && Number(decodeCursor(asked.cursor, ["number"])[0]);
  const docs = await selectDocs(db)
    .where(before ? lt(entries.seq, before) : undefined)
    .orderBy(desc(entries.seq))
    .limit(size + 1);
  const page = pageOf(
    docs,
    size,
    (doc) => [doc.seq],
    (doc) => doc,
  );
  return { rows: await historyOf(db, page.rows), next: page.next };
}

export async function readEntry(ctx: Context, id: string): Promise<HistoryEntry | null> {
  const docs = await selectDocs(ctx.store.db).where(eq(entries.id, id));
  const [found] = await historyOf(ctx.store.db, docs);
  return found ?? null;
}

const EXPORTED_AT_ONCE = 200;

/** The log in its own order, a batch in memory at a time. */
export async function* readLog(ctx: Context): AsyncGenerator<HistoryEntry, void, undefined> {
  const { db } = ctx.store;
  for (let last = 0; ; ) {
    const docs = await selectDocs(db)
      .where(gt(entries.seq, last))
      .orderBy(entries.seq)
      .limit(EXPORTED_AT_ONCE);
    yield* await namedHistory(db, docs);
    const final = docs.at(-1);
    if (final === undefined) return;
    last = final.seq;
  }
}
