import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import type { TableInput } from "./domain.ts";
import { isAny } from "./look-up.ts";

const cellProblem = (cell: TableCell, pointer: string, input: TableInput | undefined) => {
  const isRange = typeof cell === "object" && !Array.isArray(cell);
  if (isAny(cell))
    return Object.keys(cell).length > 1 ? [problem(pointer, "table-cell-any-and-more")] : [];
  const expected = input?.type;
  const fits = isRange
    ? expected === "number"
    : (Array.isArray(cell) ? cell : [cell]).every((value) => typeof value === expected);
  return expected === undefined || fits ? [] : [problem(pointer, "table-cell-type", { expected })];
};

const rowProblems = (table: TableDefinition, inputs: readonly TableInput[]): readonly Problem[] =>
  table.rules.flatMap((rule, row) => {
    const pointer = at("/rules", row, "when");
    if (rule.when.length !== table.inputs.length) {
      const params = { expected: table.inputs.length, found: rule.when.length };
      return [problem(pointer, "table-columns", params)];
    }
    return rule.when.flatMap((cell, column) =>
      cellProblem(cell, at(pointer, column), inputs[column]),
    );
  });

/** Collecting takes an aggregate and a declared number of rules; the other policies have neither. */
const policyProblems = (table: TableDefinition): readonly Problem[] => {
  const { policy } = table;
  const collects = policy === "collect";
  return (["aggregate", "expect"] as const).flatMap((keyword) => {
    if ((table[keyword] !== undefined) === collects) return [];
    return collects
      ? [problem("", "table-policy-needs", { policy, keyword })]
      : [problem(`/${keyword}`, "table-policy-without", { policy, keyword })];
  });
};

/** What is wrong with the table before anything can be said of what it covers. */
export const shapeProblems = (
  table: TableDefinition,
  inputs: readonly TableInput[],
): readonly Problem[] => {
  const kinds = new Set(table.rules.map((rule) => typeof rule.then));
  const words = table.policy === "collect" && kinds.has("string");
  return [
    ...policyProblems(table),
    ...(kinds.size > 1 ? [problem("/rules", "table-mixed-outcomes")] : []),
    ...(kinds.size === 1 && words ? [problem("/rules", "table-collects-words")] : []),
    ...rowProblems(table, inputs),
    // A row that catches the rest, or a removed row would silently hand its cases to another.
    ...(table.policy === "first" && !table.rules.at(-1)?.when.every(isAny)
      ? [problem("/rules", "table-without-final-rule")]
      : []),
  ];
};
