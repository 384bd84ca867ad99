import type { HistoryEntry } from "@roundbook/schemas";
import type { Context } from "../usecases/context.ts";
import { readAsset } from "../usecases/read-assets.ts";
import { readHistory } from "../usecases/read-history.ts";
import { readArguments } from "./arguments.ts";
import { DONE, NOT_RIGHT, type Verb } from "./io.ts";
import { withEstate } from "./open-estate.ts";
import { table } from "./table.ts";

const PAGE = 100;

/** One asset's entries, oldest first: they fit in memory, as one asset has few. */
async function entriesOf(ctx: Context, asset: string): Promise<HistoryEntry[]> {
  const rows: HistoryEntry[] = [];
  let cursor: string | undefined;
  do {
    const page = await readHistory(ctx, asset, { cursor, limit: PAGE });
    rows.push(...page.rows);
    cursor = page.next ?? undefined;
  } while (cursor !== undefined);
  return rows.reverse();
}

/** What one looks for first stands first; the entry and its leaf follow whole. */
function told({ entry, leaf, authorName, contents, received, sample }: HistoryEntry) {
  // With what the laboratory has found since: the leaf keeps what was known when it was sealed.
  const judgement = received?.judgement ?? leaf.judgement;
  const scores = Object.entries(judgement?.scores ?? {}).map(([name, { score }]) => [name, score]);
  return {
    date: entry.civilDate,
    kind: entry.kind,
    overall: judgement?.overall ?? null,
    complete: judgement?.complete ?? null,
    pending: judgement?.pending ?? [],
    scores: Object.fromEntries(scores) as Record<string, number | null>,
    author: authorName,
    entry,
    leaf,
    contents,
    ...(received ? { received } : {}),
    ...(sample === undefined ? {} : { sample }),
  };
}

export function cells(row: HistoryEntry): string[] {
  const { date, kind, complete, pending, scores } = told(row);
  const figures = Object.entries(scores).map(([name, score]) => `${name} ${score ?? "none"}`);
  const words = [
    verdictWords(row),
    complete === false ? "not complete" : "",
    pending.length > 0 ? `pending: ${pending.join(", ")}` : "",
  ].filter((one) => one !== "");
  return [date, kind, words.join("; "), figures.join(", "), row.authorName];
}

/** A result that came since never takes the place of what was known when it was signed. */
function verdictWords({ leaf, received, sample }: HistoryEntry): string {
  const signed = leaf.judgement?.overall ?? "";
  if (sample !== undefined) return `sample ${sample}: ${signed}`;
  const now = received?.judgement.overall ?? "";
  return received === undefined || now === signed
    ? signed
    : `${signed} when signed; ${now} since entry ${received.since}`;
}

export const history: Verb = {
  usage: "history ASSET [--json]   (its number or id)",
  async run(args, io) {
    const { values, positionals } = readArguments(args, ["ASSET"], {});
    const [name = ""] = positionals;
    return withEstate(io, async (ctx) => {
      const found = (await readAsset(ctx, `number:${name}`)) ?? (await readAsset(ctx, name));
      if (!found) {
        io.err(`there is no asset ${name}`);
        return NOT_RIGHT;
      }
      const rows = await entriesOf(ctx, found.asset.id);
      if (!values.json) await io.out(table(rows.map(cells)));
      else for (const row of rows) await io.out(JSON.stringify(told(row)));
      return DONE;
    });
  },
};
