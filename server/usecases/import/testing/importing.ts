import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { ImportMapping, RegisterMapping, ResultsMapping } from "@roundbook/schemas";
import { tempFolder } from "../../../store/testing/temp-store.ts";
import { importFile } from "../../import-file.ts";
import { readLog } from "../../read-history.ts";
import { testEstate } from "../../testing/estate.ts";

/** The test estate with a folder for files to import into it. */
export async function importing() {
  const estate = await testEstate();
  const { ctx, session } = estate;
  const folder = tempFolder();
  let files = 0;

  const results = (more: Partial<ResultsMapping> = {}): ResultsMapping => ({
    kind: "results",
    source: "old papers",
    checklist: estate.ids.checklist,
    asset: { number: "no", assetType: "door" },
    createAssets: true,
    date: { column: "date", format: "DD/MM/YYYY" },
    answers: {
      closes: { column: "closes", words: { Y: "ok", N: "not-ok" } },
      gap: { column: "gap" },
    },
    ...more,
  });
  const register = (more: Partial<RegisterMapping> = {}): RegisterMapping => ({
    kind: "register",
    source: "old register",
    asset: { number: "no", assetType: "door", description: "what", place: ["site", "house"] },
    ...more,
  });
  const bring = async (mapping: ImportMapping, content: string | Uint8Array, trial = false) => {
    const path = join(folder, `${++files}.csv`);
    writeFileSync(path, content);
    return importFile(ctx, session, { path, mapping, trial });
  };
  const log = async () => {
    const rows = [];
    for await (const row of readLog(ctx)) rows.push(row);
    return rows;
  };
  return { estate, ctx, results, register, bring, log };
}
