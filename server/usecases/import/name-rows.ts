import { problem } from "@roundbook/schemas";
import { numberKey } from "../../store/words.ts";
import { findSources } from "../read-sources.ts";
import type { CsvRow } from "./csv.ts";
import { already, badRow, type Desk, fault, type NamedRow, type RowOutcome } from "./desk.ts";
import { contentOf, derivedId } from "./identity.ts";

const LONGEST_KEY = 400;
const LONGEST_NUMBER = 64;
/** What other encodings leave when they are read as UTF-8: replacement characters, or NULs. */
const GARBLED = /\uFFFD|\0/;

export interface NamedBatch {
  /** Rows that are still to be read. */
  readonly rows: readonly NamedRow[];
  /** Rows whose outcome is known from their identity alone, by row number. */
  readonly settled: ReadonlyMap<number, RowOutcome>;
}

type Texts = Omit<NamedRow, "key" | "entry"> & { readonly given: string | null };

/**
 * Gives every row the identity it keeps for ever: its mapped key, for a register without one the
 * asset's number, else its content and how many times the file said the same before. A key that
 * was seen with the same content is the same row; with other content it is a fault of the row.
 */
export async function nameRows(desk: Desk, batch: readonly CsvRow[]): Promise<NamedBatch> {
  const { mapping, scratch } = desk;
  const settled = new Map<number, RowOutcome>();
  const texts: Texts[] = [];
  for (const source of batch) {
    const read = readTexts(desk, source);
    if ("given" in read) texts.push(read);
    else settled.set(source.row, read);
  }
  const seen = await scratch.see(
    texts.map(({ given, content, source }) => ({
      name: given === null ? `content:${content}` : `key:${given}`,
      content,
      row: source.row,
    })),
  );
  await settleTwins(desk, texts, settled);
  const rows: NamedRow[] = [];
  const kind = mapping.kind === "register" ? "registered" : "inspection";
  for (const [index, { given, ...text }] of texts.entries()) {
    if (settled.has(text.source.row)) continue;
    const { before = 0, row = 0, content = "" } = seen[index] ?? {};
    if (given !== null && before > 0) {
      settled.set(text.source.row, repeated(desk, given, row, content === text.content));
      continue;
    }
    const key = given ?? `${text.content}#${before + 1}`;
    rows.push({ ...text, key, entry: derivedId(kind, mapping.source, key) });
  }
  return { rows: await unsealed(desk, rows, settled), settled };
}

function readTexts(desk: Desk, source: CsvRow): Texts | RowOutcome {
  const { mapping, columns } = desk;
  if (source.fault) return badRow(fault(null, source.fault));
  const cell = columns.cells(source);
  const broken = columns.content.filter((column) => GARBLED.test(cell(column)));
  if (broken.length > 0)
    return badRow(...broken.map((column) => fault(column, problem("", "csv-not-utf8"))));
  const number = cell(mapping.asset.number);
  if (number === "" || number.length > LONGEST_NUMBER) {
    const about =
      number === ""
        ? problem("/asset/number", "asset-number-missing")
        : tooLong("/asset/number", number, LONGEST_NUMBER);
    return badRow(fault(mapping.asset.number, about));
  }
  const looked = numberKey(number);
  const given = keyOf(desk, cell, looked);
  if (given === "" || (given !== null && given.length > LONGEST_KEY)) {
    const about =
      given === "" ? problem("/key", "key-missing") : tooLong("/key", given, LONGEST_KEY);
    return badRow(fault(mapping.key ?? null, about));
  }
  const said = Object.fromEntries(columns.content.map((column) => [column, cell(column)]));
  return { source, cell, number, numberKey: looked, given, content: contentOf(said) };
}

const tooLong = (pointer: string, text: string, limit: number) =>
  problem(pointer, "label-too-long", { length: text.length, limit });

function keyOf({ mapping }: Desk, cell: NamedRow["cell"], number: string): string | null {
  if (mapping.key !== undefined) return cell(mapping.key);
  return mapping.kind === "register" ? number : null;
}

/** A key for the second time in one file. */
function repeated({ mapping }: Desk, key: string, row: number, same: boolean): RowOutcome {
  if (same) return already;
  const column = mapping.key ?? mapping.asset.number;
  return badRow(fault(column, problem("/key", "same-key-twice", { key, row })));
}

/** In a register a number stands for one asset, however alike its rows are. */
async function settleTwins(
  { mapping, scratch }: Desk,
  texts: readonly Texts[],
  settled: Map<number, RowOutcome>,
): Promise<void> {
  if (mapping.kind !== "register") return;
  const seen = await scratch.see(
    texts.map(({ numberKey: number, source }) => ({
      name: `number:${number}`,
      content: "",
      row: source.row,
    })),
  );
  for (const [index, { number, source }] of texts.entries()) {
    const earlier = seen[index];
    if (!earlier || earlier.before === 0) continue;
    const about = problem("/asset/number", "number-twice", { number, row: earlier.row });
    settled.set(source.row, badRow(fault(mapping.asset.number, about)));
  }
}

/** Settles the rows whose entry stands in the log already; gives the others. */
async function unsealed(
  { ctx, mapping }: Desk,
  rows: readonly NamedRow[],
  settled: Map<number, RowOutcome>,
): Promise<readonly NamedRow[]> {
  const sealed = await findSources(
    ctx,
    rows.map(({ entry }) => entry),
  );
  return rows.filter(({ entry, content, key, source }) => {
    const there = sealed.get(entry);
    if (!there) return true;
    const about = problem("/key", "same-key-other-content", { key, entry });
    const column = mapping.key ?? mapping.asset.number;
    settled.set(source.row, there.content === content ? already : badRow(fault(column, about)));
    return false;
  });
}
