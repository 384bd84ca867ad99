import {
  type ChecklistRow,
  type ImportMapping,
  type ImportReport,
  usesPrevious,
} from "@roundbook/schemas";
import { appendEntries } from "./append-entries.ts";
import { appendInTurn } from "./append-in-turn.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import type { Context, Session } from "./context.ts";
import { checkMapping } from "./import/check-mapping.ts";
import { bindColumns } from "./import/columns.ts";
import { type CsvFile, type CsvRow, openCsv } from "./import/csv.ts";
import {
  type Desk,
  fault,
  type KnownAsset,
  type NamedRow,
  type RowOutcome,
} from "./import/desk.ts";
import { keepAssets, knownAssets } from "./import/known-assets.ts";
import { nameRows } from "./import/name-rows.ts";
import { placeTree } from "./import/place-tree.ts";
import { registerRow } from "./import/register-row.ts";
import { type Rule, resultsRow } from "./import/results-row.ts";
import { openScratch } from "./import/scratch.ts";
import { Tally } from "./import/tally.ts";
import { judgeFor } from "./judge-for.ts";
import { readNewestIssue } from "./read-checklists.ts";
import { readAssetTypes, readPlaces } from "./read-register.ts";

/** Enough that a commit is rare, few enough that other writers wait a moment only. */
const ROWS_AT_ONCE = 800;

/**
 * Imports a CSV file, or with `trial` reports what an import would do and writes nothing: both run
 * the same code. A row is in wholly, with the places and the asset it names first, or out wholly
 * and in the report; rows without a fault are imported whatever becomes of the others, so that a
 * mended file can be imported again and adds only what was mended. A fault of the file or of the
 * mapping (row 0) leaves everything out. `newEntries` counts every entry sealed, those of new
 * places and assets included.
 */
export async function importFile(
  ctx: Context,
  by: Session,
  given: { readonly path: string; readonly mapping: ImportMapping; readonly trial: boolean },
): Promise<ImportReport> {
  const { path, mapping, trial } = given;
  const tally = new Tally();
  const file = await openCsv(path, mapping.delimiter, ROWS_AT_ONCE);
  if (!file.ok) {
    tally.bad(
      0,
      file.problems.map((problem) => fault(null, problem)),
    );
    return tally.report(trial);
  }
  const columns = bindColumns(mapping, file.value.columns);
  const zone = await estateZone(ctx);
  const scratch = await openScratch();
  try {
    const desk: Desk = {
      ctx,
      by,
      mapping,
      columns,
      decimal: mapping.decimal ?? ".",
      today: civilNow(ctx, zone),
      types: new Map((await readAssetTypes(ctx)).map((type) => [type.assetType, type])),
      places: placeTree(await readPlaces(ctx), zone),
      scratch,
    };
    const issued = await issueOf(ctx, mapping);
    const problems = await checkMapping(desk, issued);
    const faults = [...columns.faults, ...problems.map((problem) => fault(null, problem))];
    if (faults.length > 0) tally.bad(0, faults);
    else await importRows(desk, issued, file.value, tally, trial);
    return tally.report(trial);
  } finally {
    await scratch.close();
  }
}

async function issueOf(ctx: Context, mapping: ImportMapping): Promise<ChecklistRow | null> {
  return mapping.kind === "results" ? readNewestIssue(ctx, mapping.checklist) : null;
}

async function importRows(
  desk: Desk,
  issued: ChecklistRow | null,
  file: CsvFile,
  tally: Tally,
  trial: boolean,
): Promise<void> {
  const { ctx } = desk;
  const rule = issued && { issued, judge: await judgeFor(ctx, ctx.store.db, issued.hash) };
  const append = issued && usesPrevious(issued.document) ? appendInTurn : appendEntries;
  for await (const batch of file.batches()) {
    const outcomes = await readBatch(desk, rule, batch);
    const drafts = outcomes.flatMap((row) => (row.outcome === "new" ? [row.draft] : []));
    const added = drafts.flatMap(({ places }) => places);
    const entries = [
      ...added.map((body) => ({
        kind: "place-added" as const,
        asset: null,
        author: desk.by.person,
        civilDate: desk.today,
        happenedAt: null,
        body,
      })),
      ...drafts.flatMap((draft) => draft.entries),
    ];
    if (!trial && entries.length > 0)
      await append(ctx, { entries, contents: drafts.flatMap(({ contents }) => contents) });
    const assets = drafts.flatMap(({ asset }) => asset ?? []);
    await keepAssets(desk.scratch, assets);
    count(tally, batch, outcomes);
    tally.newAssets += assets.length;
    tally.newEntries += entries.length;
  }
}

function count(tally: Tally, batch: readonly CsvRow[], outcomes: readonly RowOutcome[]): void {
  tally.rows += batch.length;
  for (const [index, row] of outcomes.entries()) {
    if (row.outcome === "already") tally.already += 1;
    else if (row.outcome === "bad") tally.bad(batch[index]?.row ?? 0, row.faults);
  }
}

/** The outcome of every row, in order; a row sees the assets and places of the rows before it. */
async function readBatch(
  desk: Desk,
  rule: Rule | null,
  batch: readonly CsvRow[],
): Promise<readonly RowOutcome[]> {
  const { rows, settled } = await nameRows(desk, batch);
  const outcomes = new Map(settled);
  const known = await knownAssets(desk, [...new Set(rows.map(({ numberKey }) => numberKey))]);
  for (const row of rows) {
    const there = known.get(row.numberKey) ?? [];
    const outcome = readRow(desk, rule, row, there);
    outcomes.set(row.source.row, outcome);
    if (outcome.outcome !== "new") continue;
    const { asset, places } = outcome.draft;
    if (asset) known.set(row.numberKey, [asset]);
    desk.places.grow(places);
  }
  return batch.flatMap(({ row }) => outcomes.get(row) ?? []);
}

function readRow(
  desk: Desk,
  rule: Rule | null,
  row: NamedRow,
  known: readonly KnownAsset[],
): RowOutcome {
  const { mapping } = desk;
  if (mapping.kind === "register") return registerRow({ ...desk, mapping }, row, known);
  if (!rule) throw new Error("results are read by an issued checklist");
  return resultsRow({ ...desk, mapping }, rule, row, known);
}
