import { createReadStream } from "node:fs";
import { open } from "node:fs/promises";
import { type Problem, problem, type Result } from "@roundbook/schemas";
import { parse } from "csv-parse";

const DELIMITERS = [",", ";", "\t", "|"] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** A record below the header: `row` counts from 1, blank lines included, as a spreadsheet shows it. */
export interface CsvRow {
  readonly row: number;
  readonly cells: readonly string[];
  /** The record could not be read as one row of this table; its cells are then of no use. */
  readonly fault: Problem | null;
}

export interface CsvFile {
  readonly columns: readonly string[];
  readonly delimiter: Delimiter;
  /** Rows in order, a batch at a time; memory holds one batch whatever the file's length. */
  readonly batches: () => AsyncGenerator<readonly CsvRow[]>;
}

/** A quote nobody closed would otherwise swallow the file: no honest row of a register is longer. */
const LONGEST_ROW = 1_000_000;
const HEAD_BYTES = 64 * 1024;
const QUOTE = '"';
const REPLACEMENT = "\uFFFD";

/** Bytes of the beginning of the file; empty when it has none. */
async function headOf(path: string): Promise<Uint8Array> {
  const file = await open(path, "r");
  try {
    const { buffer, bytesRead } = await file.read(new Uint8Array(HEAD_BYTES), 0, HEAD_BYTES, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

/** The candidate that stands most often outside quotes in the header; a comma when none does. */
export function delimiterOf(head: string): Delimiter {
  const count = new Map<string, number>(DELIMITERS.map((mark) => [mark, 0]));
  let quoted = false;
  for (const mark of head) {
    if (mark === QUOTE) quoted = !quoted;
    else if (!quoted && (mark === "\n" || mark === "\r")) break;
    else if (!quoted && count.has(mark)) count.set(mark, (count.get(mark) ?? 0) + 1);
  }
  return DELIMITERS.reduce((best, mark) =>
    (count.get(mark) ?? 0) > (count.get(best) ?? 0) ? mark : best,
  );
}

function isUtf16(head: Uint8Array): boolean {
  const marked = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  return marked || head.subarray(0, 200).includes(0);
}

/** Opens a CSV file (RFC 4180, with any of the usual delimiters, line ends and a byte order mark). */
export async function openCsv(
  path: string,
  given?: Delimiter,
  batchSize = 500,
): Promise<Result<CsvFile>> {
  const head = await headOf(path);
  if (isUtf16(head)) return { ok: false, problems: [problem("", "csv-not-utf8")] };
  const text = new TextDecoder().decode(head);
  if (text.trim() === "") return { ok: false, problems: [problem("", "csv-empty")] };
  const delimiter = given ?? delimiterOf(text);
  let columns: readonly string[] = [];
  for await (const record of records(path, delimiter)) {
    if (record.fault) return { ok: false, problems: [record.fault] };
    columns = record.cells.map((cell) => cell.trim());
    break;
  }
  if (columns.some((column) => column.includes(REPLACEMENT)))
    return { ok: false, problems: [problem("", "csv-not-utf8")] };
  const batches = () => inBatches(path, delimiter, columns.length, batchSize);
  return { ok: true, value: { columns, delimiter, batches } };
}

async function* inBatches(path: string, delimiter: Delimiter, width: number, size: number) {
  let batch: CsvRow[] = [];
  for await (const record of records(path, delimiter)) {
    if (record.row === 0 || isBlank(record)) continue;
    batch.push(record.fault ? record : fitted(record, width));
    if (batch.length < size) continue;
    yield batch;
    batch = [];
  }
  if (batch.length > 0) yield batch;
}

const isBlank = ({ cells, fault }: CsvRow) => !fault && cells.every((cell) => cell.trim() === "");

/** Spreadsheets pad rows with empty cells; any other difference from the header is a fault. */
function fitted(record: CsvRow, width: number): CsvRow {
  const { row, cells } = record;
  if (cells.length === width) return record;
  if (cells.length > width && cells.slice(width).every((cell) => cell.trim() === ""))
    return { row, cells: cells.slice(0, width), fault: null };
  const fault = problem("", "csv-ragged", { expected: width, found: cells.length });
  return { row, cells, fault };
}

/** Every record with the header as row 0. What follows a record without an end is not guessed at. */
async function* records(path: string, delimiter: Delimiter): AsyncGenerator<CsvRow> {
  let next = 0;
  let broken: CsvRow | null = null;
  const parser = parse({
    bom: true,
    delimiter,
    record_delimiter: ["\r\n", "\n", "\r"],
    // 24" ladder: a quote inside an unquoted cell is an inch mark, and unambiguous.
    relax_quotes: true,
    relax_column_count: true,
    max_record_size: LONGEST_ROW,
    skip_records_with_error: true,
    // Counted here, in order: what follows a broken record may reach us before it is known.
    on_record: (cells: string[]) => [String(next++), ...cells],
    on_skip: (error) => {
      const open = error?.code === "CSV_QUOTE_NOT_CLOSED";
      const code = open ? "csv-quote-open" : "csv-row-too-long";
      broken ??= { row: next++, cells: [], fault: problem("", code, { limit: LONGEST_ROW }) };
      return undefined;
    },
  });
  const source = createReadStream(path);
  source.on("error", (error) => parser.destroy(error));
  source.pipe(parser);
  try {
    for await (const [count, ...cells] of parser as AsyncIterable<string[]>) {
      const row = Number(count);
      const stop = broken as CsvRow | null;
      if (stop && row > stop.row) break;
      yield { row, cells, fault: null };
    }
    if (broken) yield broken;
  } finally {
    source.destroy();
    parser.destroy();
  }
}
