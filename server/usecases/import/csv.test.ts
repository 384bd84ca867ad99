import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { type CsvRow, delimiterOf, openCsv } from "./csv.ts";

const folder = mkdtempSync(join(tmpdir(), "roundbook-csv-"));
afterAll(() => rmSync(folder, { recursive: true }));
let files = 0;

async function read(content: string | Uint8Array) {
  const path = join(folder, `${++files}.csv`);
  writeFileSync(path, content);
  const file = await openCsv(path);
  if (!file.ok) return { columns: [], rows: [], code: file.problems[0]?.code };
  const rows: CsvRow[] = [];
  for await (const batch of file.value.batches()) rows.push(...batch);
  return { columns: file.value.columns, rows, delimiter: file.value.delimiter };
}

const cells = (rows: readonly CsvRow[]) => rows.map((row) => row.cells);

describe("a CSV file", () => {
  test("may carry a byte order mark, CRLF line ends, quotes and line breaks within quotes", async () => {
    const { columns, rows } = await read(
      '\uFEFFno,note\r\n1,"said ""ok"",\r\ntwice"\r\n2,24" wide\r\n',
    );
    expect(columns).toEqual(["no", "note"]);
    expect(cells(rows)).toEqual([
      ["1", 'said "ok",\r\ntwice'],
      ["2", '24" wide'],
    ]);
  });

  test("shows its delimiter in its header, outside quotes", () => {
    expect(delimiterOf('"a,b,c";d;e\n1,2,3,4')).toBe(";");
    expect(delimiterOf("a\tb\n")).toBe("\t");
    expect(delimiterOf("a|b|c\n")).toBe("|");
    expect(delimiterOf("only\n")).toBe(",");
  });

  test("may mix line ends", async () => {
    const { rows } = await read("a;b\r\n1;2\n3;4\r5;6");
    expect(cells(rows)).toEqual([
      ["1", "2"],
      ["3", "4"],
      ["5", "6"],
    ]);
  });

  test("keeps the row numbers a spreadsheet shows: blank lines count and say nothing", async () => {
    const { rows } = await read("a,b\n1,2\n\n,\n3,4\n");
    expect(rows.map(({ row }) => row)).toEqual([1, 4]);
  });

  test("names a row that is longer or shorter than its header; empty padding is neither", async () => {
    const { rows } = await read("a,b\n1\n1,2,3\n1,2,,\n");
    expect(rows.map(({ fault }) => fault?.params ?? null)).toEqual([
      { expected: 2, found: 1 },
      { expected: 2, found: 3 },
      null,
    ]);
  });

  test("names the row whose quote is never closed, after giving the rows before it", async () => {
    const { rows } = await read('a,b\n1,2\n3,"4\n5,6\n7,8\n');
    expect(rows.map(({ row, fault }) => [row, fault?.code])).toEqual([
      [1, undefined],
      [2, "csv-quote-open"],
    ]);
  });

  test("stops at a row of more than a million bytes instead of filling the memory", async () => {
    const { rows } = await read(
      `a,b\n1,2\n3,"${"x".repeat(1_200_000)}\n${"5,6\n".repeat(300_000)}`,
    );
    expect(rows.map(({ row, fault }) => [row, fault?.code])).toEqual([
      [1, undefined],
      [2, "csv-row-too-long"],
    ]);
  });

  test("that is empty or in UTF-16 is refused as a whole", async () => {
    expect((await read("")).code).toBe("csv-empty");
    expect((await read(Buffer.from("\uFEFFa,b\n1,2\n", "utf16le"))).code).toBe("csv-not-utf8");
  });
});
