import { at, type ImportMapping, type Problem, problem } from "@roundbook/schemas";
import type { CsvRow } from "./csv.ts";
import type { Fault } from "./tally.ts";

/** Every column a mapping names, with the place in the mapping that names it. */
function* namedColumns(mapping: ImportMapping): Generator<{ pointer: string; column: string }> {
  const { asset, key } = mapping;
  if (key !== undefined) yield { pointer: "/key", column: key };
  yield { pointer: "/asset/number", column: asset.number };
  if (typeof asset.assetType === "object")
    yield { pointer: "/asset/assetType/column", column: asset.assetType.column };
  for (const name of ["description", "serial"] as const)
    if (asset[name] !== undefined) yield { pointer: at("/asset", name), column: asset[name] };
  for (const [index, column] of (asset.place ?? []).entries())
    yield { pointer: at("/asset/place", index), column };
  for (const [name, column] of Object.entries(asset.particulars ?? {}))
    yield { pointer: at("/asset/particulars", name), column };
  if (mapping.kind === "register") {
    for (const [index, { date }] of (mapping.broughtForward ?? []).entries())
      yield { pointer: at("/broughtForward", index, "date", "column"), column: date.column };
    return;
  }
  yield { pointer: "/date/column", column: mapping.date.column };
  for (const [point, { column, more = [], elapsed }] of Object.entries(mapping.answers)) {
    yield { pointer: at("/answers", point, "column"), column };
    for (const [index, one] of more.entries())
      yield { pointer: at("/answers", point, "more", index), column: one };
    if (elapsed !== undefined) yield { pointer: at("/answers", point, "elapsed"), column: elapsed };
  }
}

/** Reads a row by column name; every column it is asked for was found in the header. */
export type CellsOf = (row: CsvRow) => (column: string) => string;

export interface BoundColumns {
  readonly cells: CellsOf;
  /** Mapped columns except the key: what they hold is what a row says. */
  readonly content: readonly string[];
  readonly faults: readonly Fault[];
}

/** Finds the mapped columns in the header; faults belong to row 0. */
export function bindColumns(mapping: ImportMapping, columns: readonly string[]): BoundColumns {
  const position = new Map(columns.map((column, index) => [column, index]));
  const faults: Fault[] = [];
  const content = new Set<string>();
  for (const { pointer, column } of namedColumns(mapping)) {
    const fault = faultOf(pointer, column, columns);
    if (fault) faults.push({ column, problem: fault });
    if (column !== mapping.key) content.add(column);
  }
  const cells: CellsOf =
    ({ cells: row }) =>
    (column) =>
      row[position.get(column) ?? -1]?.trim() ?? "";
  return { cells, content: [...content], faults };
}

function faultOf(pointer: string, column: string, columns: readonly string[]): Problem | null {
  const times = columns.filter((name) => name === column).length;
  if (times === 1) return null;
  if (times > 1) return problem(pointer, "column-twice", { column, times });
  return problem(pointer, "column-missing", { column, columns: columns.slice(0, 50) });
}
