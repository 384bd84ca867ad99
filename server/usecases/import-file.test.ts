import type { ImportReport } from "@roundbook/schemas";
import { describe, expect, test } from "vitest";
import { importing } from "./import/testing/importing.ts";

const faults = ({ problems }: ImportReport) =>
  problems.map(({ row, column, problem }) => [row, column, problem.code]);

describe("past results", () => {
  test("come in with a byte order mark, semicolons, CRLF, quotes and decimal commas", async () => {
    const { bring, results, log } = await importing();
    const file =
      '\uFEFFno;date;closes;gap\r\n"A;1";01/02/2024;Y;3,5\r\nA2;"1/2/2024";"N";"4,1 mm"\r\n';
    const report = await bring(results({ decimal: "," }), file);
    expect(report).toMatchObject({ rows: 2, newAssets: 2, newEntries: 4, badRows: 0 });
    const inspections = (await log()).filter(({ entry }) => entry.kind === "inspection");
    expect(
      inspections.map(({ entry, leaf }) => [entry.civilDate, leaf.judgement?.overall]),
    ).toEqual([
      ["2024-02-01", "pass"],
      ["2024-02-01", "fail"],
    ]);
    expect(inspections.every(({ entry }) => entry.happenedAt === null)).toBe(true);
  });

  test("are wholly in or wholly out, and every fault names its row, its column and what is wrong", async () => {
    const { bring, results, log } = await importing();
    const before = (await log()).length;
    const lines = [
      "no,date,closes,gap",
      "A1,31/02/2024,Y,3",
      "A2,2024-02-01,Y,3",
      "A3,01/02/2024,maybe,3",
      "A4,01/02/2024,Y,wide",
      'A5,01/02/2024,Y,"3,5"',
      "A6,01/02/2024,Y,3 bar",
      "A7,01/02/2044,Y,3",
      ",01/02/2024,Y,3",
      "A9,01/02/2024,Y",
      "A10,31/04/2024,maybe,wide",
      "A11,01/02/2024,Y,3",
    ];
    const report = await bring(results(), lines.join("\n"));
    expect(faults(report)).toEqual([
      [1, "date", "date-no-such-day"],
      [2, "date", "date-format"],
      [3, "closes", "word-unknown"],
      [4, "gap", "number-format"],
      [5, "gap", "number-format"],
      [6, "gap", "unit-not-accepted"],
      [7, "date", "date-in-future"],
      [8, "no", "asset-number-missing"],
      [9, null, "csv-ragged"],
      [10, "date", "date-no-such-day"],
      [10, "closes", "word-unknown"],
      [10, "gap", "number-format"],
    ]);
    expect(report).toMatchObject({ rows: 11, badRows: 10, newAssets: 1, newEntries: 2 });
    expect(await log()).toHaveLength(before + 2);
  });

  test("bytes that are no UTF-8 are a fault of their row", async () => {
    const { bring, results } = await importing();
    const bytes = Buffer.concat([
      Buffer.from("no,date,closes,gap\nA"),
      Buffer.from([0xe9]),
      Buffer.from(",01/02/2024,Y,3\nA2,01/02/2024,Y,3\n"),
    ]);
    const report = await bring(results(), bytes);
    expect(faults(report)).toEqual([[1, "no", "csv-not-utf8"]]);
    expect(report.newAssets).toBe(1);
  });

  test("a NUL, at which a database would cut the text, is a fault of its row", async () => {
    const { bring, results } = await importing();
    const rows = Array.from({ length: 20 }, (_, index) => `A${index},01/02/2024,Y,3\n`).join("");
    const report = await bring(
      results(),
      Buffer.from(`no,date,closes,gap\n${rows}B\0,01/02/2024,Y,3\n`),
    );
    expect(faults(report)).toEqual([[21, "no", "csv-not-utf8"]]);
    expect(report.newAssets).toBe(20);
  });

  test("a mapped column that is not there, or there twice, leaves everything out", async () => {
    const { bring, results, log } = await importing();
    const before = await log();
    const report = await bring(results(), "no,date,date,closes\nA1,01/02/2024,01/02/2024,Y\n");
    expect(faults(report)).toEqual([
      [0, "date", "column-twice"],
      [0, "gap", "column-missing"],
    ]);
    expect(report).toMatchObject({ rows: 0, badRows: 0, newEntries: 0 });
    expect(await log()).toEqual(before);
  });

  test("a trial reports the same and writes nothing", async () => {
    const { bring, results, log } = await importing();
    const before = await log();
    const file = "no,date,closes,gap\nA1,01/02/2024,Y,3\nA1,01/03/2024,Y,9\nA2,1/13/2024,Y,3\n";
    const trial = await bring(results(), file, true);
    expect(await log()).toEqual(before);
    expect(trial).toMatchObject({ newAssets: 1, newEntries: 3, badRows: 1 });
    expect({ ...(await bring(results(), file)), trial: true }).toEqual(trial);
  });

  test("rows alike are both kept, and importing again adds nothing", async () => {
    const { bring, results } = await importing();
    const file = "no,date,closes,gap\nA1,01/02/2024,Y,3\nA1,01/02/2024,Y,3\n";
    expect(await bring(results(), file)).toMatchObject({ newAssets: 1, newEntries: 3 });
    expect(await bring(results(), file)).toMatchObject({ newEntries: 0, already: 2 });
    const third = `${file}A1,01/02/2024,Y,3\n`;
    expect(await bring(results(), third)).toMatchObject({ newEntries: 1, already: 2 });
  });

  test("the same key with other content is a fault, in one file as in two", async () => {
    const { bring, results, log } = await importing();
    const mapping = results({ key: "id" });
    const head = "id,no,date,closes,gap\n";
    const twice = `${head}7,A1,01/02/2024,Y,3\n7,A1,01/02/2024,Y,4\n7,A1,01/02/2024,Y,3\n`;
    const report = await bring(mapping, twice);
    expect(faults(report)).toEqual([[2, "id", "same-key-twice"]]);
    expect(report).toMatchObject({ newEntries: 2, already: 1 });
    const entry = (await log()).at(-1)?.entry.id;
    const { problems } = await bring(mapping, `${head}7,A1,01/02/2024,N,3\n`);
    const params = { key: "7", entry };
    expect(problems).toMatchObject([{ problem: { code: "same-key-other-content", params } }]);
  });

  test("an asset nobody registered is a fault unless the mapping registers it", async () => {
    const { bring, results } = await importing();
    const file = "no,date,closes,gap\nA1,01/02/2024,Y,3\n";
    const report = await bring(results({ createAssets: false }), file);
    expect(faults(report)).toEqual([[1, "no", "unknown-asset"]]);
  });

  test("an empty cell is nobody's answer, never a pass", async () => {
    const { bring, results, log } = await importing();
    await bring(results(), "no,date,closes,gap\nA1,01/02/2024,Y,\n");
    const { leaf } = (await log()).at(-1) ?? {};
    expect(leaf?.judgement).toMatchObject({ overall: "undecided", complete: false });
  });

  test("free text stands beside the log, and only its commitment in the entry", async () => {
    const { bring, results, log } = await importing();
    const answers = { remarks: { column: "note" } };
    await bring(results({ answers }), 'no,date,note\nA1,01/02/2024,"Hinge, by Dag"\n');
    const { entry, contents } = (await log()).at(-1) ?? {};
    expect(JSON.stringify(entry)).not.toContain("Hinge");
    expect(Object.values(contents ?? {})).toEqual(["Hinge, by Dag"]);
  });
});
