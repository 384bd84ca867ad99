import { sql } from "drizzle-orm";
import { integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { insertTexts } from "../../server/store/insert-rows.ts";
import { entryDocs } from "../../server/store/schema/log.ts";
import { appendEntries, type Made } from "../../server/usecases/append-entries.ts";
import { judgeFor } from "../../server/usecases/judge-for.ts";
import { rebuild } from "../../server/usecases/rebuild.ts";
import { BENCH_DAY, type BenchEstate, openBenchEstate } from "./bench-estate.ts";
import { timed } from "./measure.ts";
import { type Row, rateRow } from "./row.ts";
import { NO_PARTICULARS, THIRTY_POINTS, thirtyAnswers } from "./thirty-points.ts";

/** The documents alone, without guards and indexes. */
const benchBytes = sqliteTable("bench_bytes", {
  seq: integer("seq").primaryKey(),
  entry: text("entry"),
  leaf: text("leaf"),
});
const ASSETS = 1_000;
const INSPECTIONS = 6_000;
const BATCH = 500;

const batchesOf = <T>(all: readonly T[]): T[][] =>
  Array.from({ length: Math.ceil(all.length / BATCH) }, (_, at) =>
    all.slice(at * BATCH, (at + 1) * BATCH),
  );

const registerAssets = async (estate: BenchEstate): Promise<string[]> => {
  const ids = Array.from({ length: ASSETS }, () => estate.ctx.newId());
  const entries: Made[] = ids.map((asset, at) => ({
    kind: "registered",
    asset,
    author: estate.owner,
    civilDate: BENCH_DAY,
    happenedAt: null,
    body: {
      number: String(at + 1),
      assetType: "bench",
      description: `Bench asset ${at + 1}`,
      place: estate.site,
      particulars: {},
    },
  }));
  for (const batch of batchesOf(entries)) await appendEntries(estate.ctx, { entries: batch });
  return ids;
};

/** Judging, hashing, sealing and projecting against a bare multi-row INSERT of the same bytes. */
export const benchSealing = async (): Promise<Row[]> => {
  const estate = await openBenchEstate(THIRTY_POINTS);
  const { ctx, store, checklist, owner } = estate;
  try {
    const assets = await registerAssets(estate);
    const judge = await judgeFor(ctx, store.db, checklist.hash);
    const inspection = (at: number): Made => {
      const answers = thirtyAnswers(at);
      return {
        kind: "inspection",
        asset: assets[at % ASSETS] ?? null,
        author: owner,
        civilDate: BENCH_DAY,
        happenedAt: null,
        body: {
          checklist,
          particulars: NO_PARTICULARS,
          answers: answers as Record<string, unknown>,
          judgement: judge.judge({ particulars: NO_PARTICULARS, answers }) as unknown as Record<
            string,
            unknown
          >,
        },
      } as Made;
    };
    const numbers = Array.from({ length: INSPECTIONS }, (_, at) => at);
    const sealing = await timed(async () => {
      for (const batch of batchesOf(numbers))
        await appendEntries(ctx, { entries: batch.map(inspection) });
    });
    const docs = await store.db.select().from(entryDocs);
    await store.write(async (tx) => {
      await tx.run(sql`create table bench_bytes (seq integer primary key, entry text, leaf text)`);
    });
    const bare = await timed(async () => {
      for (const batch of batchesOf(docs.slice(-INSPECTIONS))) {
        await store.write(async (tx) => {
          await insertTexts(tx, benchBytes, batch);
        });
      }
    });
    const rate = (INSPECTIONS * 1000) / sealing;
    return [
      rateRow(
        "judge, hash, seal and project",
        "multi-row INSERT of the same bytes",
        rate,
        (INSPECTIONS * 1000) / bare,
        "inspections",
      ),
      await rebuildRow(estate),
    ];
  } finally {
    await estate.close();
  }
};

const rebuildRow = async ({ ctx }: BenchEstate): Promise<Row> => {
  const { entries, perSecond } = await rebuild(ctx);
  return {
    what: "rebuild every projection",
    against: "",
    ratio: null,
    figure: `${perSecond} entries/s over ${entries}`,
  };
};
