import type { TableCell } from "../checklist/meta-schema.ts";
import type { Scalar, ScalarType } from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";

/** What is known of one input of a table. */
export interface TableInput {
  readonly type?: ScalarType;
  /** A number that is always whole. */
  readonly integer?: boolean;
  /** The only values it can have, where they are known. */
  readonly listed?: readonly Scalar[];
  readonly minimum?: number;
  readonly maximum?: number;
}

/**
 * Values of one input that no cell of its column tells apart: one value, the numbers strictly
 * between two, or every text that no cell names. `sample` is one of them.
 */
export type Piece =
  | { readonly is: "value"; readonly sample: Scalar }
  | {
      readonly is: "between";
      readonly sample: number;
      readonly above?: number;
      readonly below?: number;
    }
  | { readonly is: "other"; readonly sample: Scalar };

const MOST = roundSignificant(Number.MAX_VALUE);

/** A short number strictly between two as numbers are compared; undefined where there is none. */
const between = (
  above: number | undefined,
  below: number | undefined,
  integer: boolean,
): number | undefined => {
  if (above === undefined && below === undefined) return 0;
  const low = above ?? Math.max(-MOST, (below ?? 0) - Math.max(1, Math.abs(below ?? 0)) * 2);
  const high = below ?? Math.min(MOST, low + Math.max(1, Math.abs(low)) * 2);
  const middle = low / 2 + high / 2;
  const inside = (value: number) =>
    value > low && value < high && (!integer || Number.isInteger(value));
  for (let digits = 1; digits <= 12; digits += 1) {
    const value = Number(middle.toPrecision(digits));
    if (inside(value)) return value;
  }
  const next = roundSignificant(Math.floor(low) + 1);
  return integer && inside(next) ? next : undefined;
};

const valuesOf = (cell: TableCell): readonly Scalar[] => {
  if (Array.isArray(cell)) return cell;
  if (typeof cell !== "object") return [cell as Scalar];
  return [cell.min, cell.max, cell.exclusiveMin, cell.exclusiveMax].filter(
    (bound) => bound !== undefined,
  );
};

const numberPieces = (named: readonly number[], input: TableInput): readonly Piece[] => {
  const { integer = false, minimum, maximum } = input;
  const bounds = [minimum, maximum].filter((bound) => bound !== undefined);
  const edges = [...new Set([...named, ...bounds].map(roundSignificant))]
    .filter((edge) => edge >= (minimum ?? edge) && edge <= (maximum ?? edge))
    .sort((a, b) => a - b);
  const pieces: Piece[] = [];
  const open = (above: number | undefined, below: number | undefined) => {
    const sample = between(above, below, integer);
    if (sample !== undefined) pieces.push({ is: "between", sample, above, below });
  };
  if (minimum === undefined) open(undefined, edges[0]);
  for (const [index, edge] of edges.entries()) {
    if (!integer || Number.isInteger(edge)) pieces.push({ is: "value", sample: edge });
    const next = edges[index + 1];
    if (next !== undefined) open(edge, next);
    else if (maximum === undefined) open(edge, undefined);
  }
  return pieces;
};

const textPieces = (named: readonly string[]): readonly Piece[] => {
  let other = "…";
  while (named.includes(other)) other += "…";
  return [
    ...[...new Set(named)].map((sample) => ({ is: "value", sample }) as const),
    { is: "other", sample: other },
  ];
};

const listedPieces = (listed: readonly Scalar[], input: TableInput): readonly Piece[] => {
  const { type, integer = false, minimum, maximum } = input;
  const values = listed.map((value) =>
    typeof value === "number" ? roundSignificant(value) : value,
  );
  return [...new Set(values)]
    .filter((value) => type === undefined || typeof value === type)
    .filter(
      (value) =>
        typeof value !== "number" ||
        (value >= (minimum ?? value) &&
          value <= (maximum ?? value) &&
          (!integer || Number.isInteger(value))),
    )
    .map((sample) => ({ is: "value", sample }));
};

/**
 * Everything one input can be, cut where the cells of its column can tell it apart; numbers rise.
 * An input of unknown type has the types its cells name. No piece at all: it can have no value.
 */
export const piecesOf = (cells: readonly TableCell[], input: TableInput): readonly Piece[] => {
  if (input.listed) return listedPieces(input.listed, input);
  const named = cells.flatMap(valuesOf);
  const types = new Set(input.type ? [input.type] : named.map((value) => typeof value));
  if (types.size === 0) return [{ is: "other", sample: "…" }];
  const isNumber = (value: Scalar) => typeof value === "number";
  const isText = (value: Scalar) => typeof value === "string";
  return [
    ...(types.has("number") ? numberPieces(named.filter(isNumber), input) : []),
    ...(types.has("string") ? textPieces(named.filter(isText)) : []),
    ...(types.has("boolean")
      ? [true, false].map((sample) => ({ is: "value", sample }) as const)
      : []),
  ];
};
