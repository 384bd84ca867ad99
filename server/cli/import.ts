import {
  IMPORT_MAPPING_SCHEMA,
  type ImportMapping,
  type ImportReport,
  type RowProblem,
} from "@roundbook/schemas";
import type { Context, Session } from "../usecases/context.ts";
import { importFile } from "../usecases/import-file.ts";
import { programPerson } from "../usecases/program-person.ts";
import { say } from "../words/say.ts";
import { readArguments } from "./arguments.ts";
import { DONE, NOT_RIGHT, UsageError, type Verb } from "./io.ts";
import { enter, withEstate } from "./open-estate.ts";
import { jsonReader } from "./read-json.ts";

const FLAGS = { map: { type: "string" }, trial: { type: "boolean", default: false } } as const;
const readMapping = jsonReader<ImportMapping>(IMPORT_MAPPING_SCHEMA);

const placeOf = ({ row, column }: RowProblem): string =>
  [row === 0 ? "file" : `row ${row}`, ...(column === null ? [] : [`column ${column}`])].join(", ");

const sentence = (found: RowProblem): string => `${placeOf(found)}: ${say(found.problem)}`;

function plainly(report: ImportReport): string {
  const { trial, rows, newAssets, newEntries, already, badRows } = report;
  const verb = trial ? "would be added" : "added";
  return `${rows} rows: ${newEntries} entries ${verb}, ${newAssets} of them new assets; ${already} rows were there already; ${badRows} rows have faults`;
}

/** Faults are told on standard error as well; their status is that of anything not right. */
export const importing: Verb = {
  usage: "import FILE --map MAP.json [--trial] [--json]",
  async run(args, io) {
    const { values, positionals } = readArguments(args, ["FILE"], FLAGS);
    const [path = ""] = positionals;
    if (values.map === undefined) throw new UsageError("--map MAP.json is missing");
    const mapping = await readMapping(values.map);
    const run = (ctx: Context, by: Session) =>
      importFile(ctx, by, { path, mapping, trial: values.trial });
    // A trial writes nothing, not even its author.
    const report = values.trial
      ? await withEstate(io, async (ctx) => run(ctx, await programPerson(ctx, "Command line")))
      : await enter(io, run);
    for (const found of report.problems) io.err(sentence(found));
    const problems = report.problems.map((found) => ({ ...found, says: say(found.problem) }));
    await io.out(values.json ? JSON.stringify({ ...report, problems }) : plainly(report));
    return report.problems.length > 0 ? NOT_RIGHT : DONE;
  },
};
