import type { TableDefinition } from "../checklist/meta-schema.ts";
import type { Scalar } from "../formulas/engine-type.ts";
import { addBit, type Bits, bitsOf, noBits } from "./bits.ts";
import { type Piece, piecesOf, type TableInput } from "./domain.ts";
import { cellTest } from "./look-up.ts";

/** What looking through tables may still take, in words of sets looked at. */
export interface Budget {
  steps: number;
}

/** One input of a table as its analysis sees it. */
export interface Axis {
  readonly name: string;
  readonly pieces: readonly Piece[];
  /** Pieces that every rule treats alike, by their positions. */
  readonly classes: readonly (readonly number[])[];
  /** Of each rule, the classes its cell fits. */
  readonly rules: readonly Bits[];
}

const axisOf = (
  table: TableDefinition,
  column: number,
  input: TableInput,
  budget: Budget,
): Axis | null => {
  const cells = table.rules.map((rule) => rule.when[column] ?? { any: true as const });
  const pieces = piecesOf(cells, input);
  const size = cells.reduce<number>(
    (sum, cell) => sum + (Array.isArray(cell) ? cell.length : 1),
    0,
  );
  budget.steps -= 2 * pieces.length * size;
  if (budget.steps <= 0) return null;
  const tests = cells.map(cellTest);
  const alike = new Map<string, { readonly fits: Bits; readonly pieces: number[] }>();
  for (const [index, { sample }] of pieces.entries()) {
    const fits = noBits(tests.length);
    for (const [rule, test] of tests.entries()) if (test(sample)) addBit(fits, rule);
    const key = fits.join();
    const known = alike.get(key);
    if (known) known.pieces.push(index);
    else alike.set(key, { fits, pieces: [index] });
  }
  const classes = [...alike.values()];
  const rules = tests.map(() => noBits(classes.length));
  for (const [index, { fits }] of classes.entries())
    for (const rule of bitsOf(fits)) addBit(rules[rule] ?? fits, index);
  return {
    name: table.inputs[column]?.trim() ?? "",
    pieces,
    classes: classes.map((one) => one.pieces),
    rules,
  };
};

/** The inputs of a table as its analysis sees them; null when that takes more than there is. */
export const axesOf = (
  table: TableDefinition,
  inputs: readonly TableInput[],
  budget: Budget,
): readonly Axis[] | null => {
  const axes = table.inputs.map((_, column) => axisOf(table, column, inputs[column] ?? {}, budget));
  return axes.every((axis) => axis !== null) ? axes : null;
};

/** Pieces that end on both sides make the plainer example. */
const isBounded = (piece: Piece): boolean =>
  piece.is === "value" ||
  (piece.is === "between" && piece.above !== undefined && piece.below !== undefined);

/** A value of one input out of a set of its classes. */
export const sampleOf = (axis: Axis, classes: Bits): Scalar => {
  const pieces = bitsOf(classes)
    .flatMap((index) => axis.classes[index] ?? [])
    .sort((a, b) => a - b)
    .flatMap((index) => axis.pieces[index] ?? []);
  return (pieces.find(isBounded) ?? pieces[0])?.sample ?? "";
};
