import type { TableCell } from "../checklist/meta-schema.ts";
import type { Scalar, ScalarType } from "../formulas/engine-type.ts";

/** What is known of one input of a table. */
export interface TableInput {
  readonly type?: ScalarType;
  /** The only values it can have, where they are known. */
  readonly listed?: readonly Scalar[];
  readonly minimum?: number;
  readonly maximum?: number;
}

const numbersOf = (cell: TableCell): readonly number[] => {
  if (Array.isArray(cell)) return cell.filter((value) => typeof value === "number");
  if (typeof cell === "number") return [cell];
  if (typeof cell !== "object") return [];
  return [cell.min, cell.max, cell.exclusiveMin, cell.exclusiveMax].filter(
    (bound) => bound !== undefined,
  );
};

const isRange = (cell: TableCell): boolean =>
  typeof cell === "object" && !Array.isArray(cell) && cell.any !== true;

/**
 * Values of one input at which a table can change its answer: those it is known to have, else the
 * numbers its cells name with one between each two neighbours, else the texts its cells name.
 */
export const candidates = (cells: readonly TableCell[], input: TableInput): readonly Scalar[] => {
  if (input.listed) return input.listed;
  if (input.type === "boolean") return [true, false];
  if (input.type === "string") return [...new Set(cells.flatMap(textsOf))];
  const bounds = [input.minimum, input.maximum].filter((bound) => bound !== undefined);
  const named = [...new Set([...cells.flatMap(numbersOf), ...bounds])].sort((a, b) => a - b);
  // Single numbers say nothing about what lies between them.
  const between = cells.some(isRange)
    ? named.slice(1).map((value, index) => (value + (named[index] ?? value)) / 2)
    : [];
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = input;
  const all = [...named, ...between].filter((value) => value >= minimum && value <= maximum);
  return all.length > 0 ? all : [0];
};

const textsOf = (cell: TableCell): readonly string[] =>
  (Array.isArray(cell) ? cell : [cell]).filter((value) => typeof value === "string");
