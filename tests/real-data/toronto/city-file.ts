import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";

const BESIDE = fileURLToPath(new URL("../../../../shared/real-data", import.meta.url));

/** City of Toronto open data; contains information licensed under the Open Government Licence – Toronto. */
export const CITY_FILE = join(
  process.env.ROUNDBOOK_REAL_DATA ?? BESIDE,
  "toronto/evaluations-2022-01.csv",
);
export const isThere = existsSync(CITY_FILE);

export type CityRow = Readonly<Record<string, string>>;

/** The city's rows as they are, read apart from the importer. */
export const cityRows = (): readonly CityRow[] =>
  parse(readFileSync(CITY_FILE), { columns: true, bom: true }) as CityRow[];
