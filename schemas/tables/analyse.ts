import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { candidates, type TableInput } from "./candidates.ts";
import { cellMatches } from "./look-up.ts";

/** Cells looked at before the search for holes gives up. */
const MAX_STEPS = 200_000;

const isAny = (cell: TableCell | undefined): boolean =>
  typeof cell === "object" && !Array.isArray(cell) && cell.any === true;

const cellProblems = (table: TableDefinition, inputs: readonly TableInput[]): readonly Problem[] =>
  table.rules.flatMap((rule, row) => {
    const pointer = at("/rules", row, "when");
    if (rule.when.length !== table.inputs.length) {
      const params = { expected: table.inputs.length, found: rule.when.length };
      return [problem(pointer, "table-columns", params)];
    }
    return rule.when.flatMap((cell, column) => {
      const expected = inputs[column]?.type;
      const range = typeof cell === "object" && !Array.isArray(cell);
      const fits = range
        ? isAny(cell) || expected === "number"
        : (Array.isArray(cell) ? cell : [cell]).every((value) => typeof value === expected);
      return expected === undefined || fits
        ? []
        : [problem(at(pointer, column), "table-cell-type", { expected })];
    });
  });

/** Every combination of candidate inputs that no rule answers, or that rules answer differently. */
const coverage = (table: TableDefinition, inputs: readonly TableInput[]): readonly Problem[] => {
  const columns = table.inputs.map((_, column) =>
    candidates(
      table.rules.map((rule) => rule.when[column]).filter((cell) => cell !== undefined),
      inputs[column] ?? {},
    ),
  );
  const combinations = columns.reduce((count, column) => count * column.length, 1);
  if (combinations * table.rules.length * columns.length > MAX_STEPS) return [];
  let hole: Problem | undefined;
  let overlap: Problem | undefined;
  for (let number = 0; number < combinations && !(hole && overlap); number += 1) {
    let rest = number;
    const given = columns.map((column) => {
      const value = column[rest % column.length];
      rest = Math.floor(rest / column.length);
      return value;
    });
    const hits = table.rules.flatMap((rule, row) =>
      given.every((value, column) => {
        const cell = rule.when[column];
        return value !== undefined && cell !== undefined && cellMatches(cell, value);
      })
        ? [row]
        : [],
    );
    const params = { inputs: given.map(String) };
    if (hits.length === 0) hole ??= problem("", "table-hole", params);
    const thens = new Set(hits.map((row) => table.rules[row]?.then));
    if (table.policy === "unique" ? hits.length > 1 : thens.size > 1) {
      overlap ??= problem("", "table-overlap", { rules: hits.map((row) => row + 1), ...params });
    }
  }
  return [hole, overlap].filter((found) => found !== undefined);
};

/**
 * What is wrong with a table, as pointers into it. Holes and overlaps are looked for at the
 * bounds its cells name and between them, within the values its inputs are known to have.
 */
export const tableProblems = (
  table: TableDefinition,
  inputs: readonly TableInput[] = [],
): readonly Problem[] => {
  const kinds = new Set(table.rules.map((rule) => typeof rule.then));
  const problems = [
    ...(kinds.size > 1 ? [problem("/rules", "table-mixed-outcomes")] : []),
    ...cellProblems(table, inputs),
  ];
  if (problems.length > 0) return problems;
  if (table.policy !== "first") return coverage(table, inputs);
  // A row that catches the rest, or a removed row would silently hand its cases to another.
  return table.rules.at(-1)?.when.every(isAny)
    ? []
    : [problem("/rules", "table-without-final-rule")];
};
