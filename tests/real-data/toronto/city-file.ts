import { existsSync, readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { realDataPath } from "../folder.ts";

/** City of Toronto open data; contains information licensed under the Open Government Licence – Toronto. */
export const CITY_FILE = realDataPath("toronto", "evaluations-2022-01.csv");
export const isThere = existsSync(CITY_FILE);

export type CityRow = Readonly<Record<string, string>>;

/** The city's rows as they are, read apart from the importer. */
export const cityRows = (): readonly CityRow[] =>
  parse(readFileSync(CITY_FILE), { columns: true, bom: true }) as CityRow[];
