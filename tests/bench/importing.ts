import { mkdtempSync, rmSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ImportMapping } from "@roundbook/schemas";
import { importFile } from "../../server/usecases/import-file.ts";
import { openBenchEstate } from "./bench-estate.ts";
import { timed } from "./measure.ts";
import type { Row } from "./row.ts";
import { TWENTY_GRADES } from "./twenty-grades.ts";

const ROWS = 20_000;
const TARGET = 2_500;

const csv = (names: readonly string[]): string => {
  const lines = [["key", "number", "date", ...names].join(",")];
  for (let row = 1; row <= ROWS; row += 1) {
    const day = `2025-${String(1 + (row % 12)).padStart(2, "0")}-${String(1 + (row % 28)).padStart(2, "0")}`;
    const grades = names.map((_, at) =>
      (row + at) % 9 === 0 ? "" : String(1 + ((row * 7 + at) % 5)),
    );
    lines.push([`k${row}`, `B${1 + (row % 7000)}`, day, ...grades].join(","));
  }
  return `${lines.join("\n")}\n`;
};

/** Rows read, checked, judged, sealed and projected, with the assets they name. */
export const benchImporting = async (): Promise<Row[]> => {
  const folder = mkdtempSync(join(tmpdir(), "roundbook-bench-csv-"));
  const estate = await openBenchEstate(TWENTY_GRADES);
  try {
    const path = join(folder, "results.csv");
    const names = Object.keys(TWENTY_GRADES.properties);
    await writeFile(path, csv(names));
    const mapping: ImportMapping = {
      kind: "results",
      source: "bench",
      key: "key",
      checklist: estate.checklist.id,
      asset: { number: "number", assetType: "bench", site: "Bench" },
      createAssets: true,
      date: { column: "date", format: "YYYY-MM-DD" },
      answers: Object.fromEntries(
        names.map((name) => [name, { column: name, empty: "not-applicable" }]),
      ),
    };
    let bad = 0;
    let entries = 0;
    const took = await timed(async () => {
      const report = await importFile(
        estate.ctx,
        { person: estate.owner, role: "owner" },
        { path, mapping, trial: false },
      );
      bad = report.badRows;
      entries = report.newEntries;
    });
    if (bad > 0) throw new Error(`${bad} rows of the bench's own file are bad`);
    const rate = (ROWS * 1000) / took;
    return [
      {
        what: "import, judged and sealed",
        against: "",
        ratio: null,
        figure: `${Math.round(rate)} rows/s, ${entries} entries of ${ROWS} rows`,
        target: `≥ ${TARGET} rows/s`,
        met: rate >= TARGET,
      },
    ];
  } finally {
    await estate.close();
    rmSync(folder, { recursive: true, force: true });
  }
};
