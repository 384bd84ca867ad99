import type { Scalar } from "../formulas/engine-type.ts";
import { type Axis, sampleOf } from "./axis.ts";
import { type Bits, bitsOf, joined } from "./bits.ts";
import type { Piece } from "./domain.ts";
import type { Box } from "./search.ts";

/** Alternatives of one input that are written out; more end in an ellipsis. */
const MAX_PRINTED = 8;

/** Boxes that differ along one axis only, put together until none do; in the order of their inputs. */
export const mergeBoxes = (boxes: readonly Box[], axes: readonly Axis[]): readonly Box[] => {
  let merged = boxes;
  for (let before = -1; before !== merged.length; ) {
    before = merged.length;
    for (const axis of axes.keys()) {
      const alike = new Map<string, Box>();
      for (const box of merged) {
        const key = box.map((classes, index) => (index === axis ? "" : classes.join())).join(";");
        const other = alike.get(key)?.[axis];
        const classes = box[axis];
        alike.set(key, other && classes ? box.with(axis, joined(other, classes)) : box);
      }
      merged = [...alike.values()];
    }
  }
  const places = merged.map((box) => ({
    box,
    at: box.map((classes, axis) => firstPiece(axes[axis], classes)),
  }));
  places.sort((a, b) => {
    const axis = a.at.findIndex((place, index) => place !== b.at[index]);
    return (a.at[axis] ?? 0) - (b.at[axis] ?? 0);
  });
  return places.map(({ box }) => box);
};

const piecesIn = (axis: Axis, classes: Bits): readonly number[] =>
  bitsOf(classes)
    .flatMap((index) => axis.classes[index] ?? [])
    .sort((a, b) => a - b);

const firstPiece = (axis: Axis | undefined, classes: Bits): number =>
  (axis && piecesIn(axis, classes)[0]) ?? 0;

/** A run of neighbouring numbers as people write it: `10 < asset.kg ≤ 20`. */
const printRun = (name: string, first: Piece, last: Piece): string => {
  if (first === last && first.is === "value") return `${name} = ${first.sample}`;
  const low = first.is === "between" ? first.above : Number(first.sample);
  const high = last.is === "between" ? last.below : Number(last.sample);
  const [from, to] = [first.is === "between" ? "<" : "≤", last.is === "between" ? "<" : "≤"];
  if (low === undefined) return high === undefined ? name : `${name} ${to} ${high}`;
  if (high === undefined) return `${name} ${from === "<" ? ">" : "≥"} ${low}`;
  return `${low} ${from} ${name} ${to} ${high}`;
};

const listed = (values: readonly string[]): string =>
  (values.length > MAX_PRINTED ? [...values.slice(0, MAX_PRINTED), "…"] : values).join(" / ");

/** Neighbouring numbers of an axis, each run by its first and last piece. */
const runsOf = (axis: Axis, chosen: readonly number[]): readonly (readonly [Piece, Piece])[] => {
  const runs: [Piece, Piece][] = [];
  for (const [place, index] of chosen.entries()) {
    const piece = axis.pieces[index];
    const run = runs.at(-1);
    if (!piece || typeof piece.sample !== "number") continue;
    if (run && chosen[place - 1] === index - 1) run[1] = piece;
    else runs.push([piece, piece]);
  }
  return runs;
};

/** What is said of one input, in signs rather than words; null when it may be anything it can be. */
const printSide = (axis: Axis, classes: Bits): string | null => {
  const name = /^[\w.]+$/.test(axis.name) ? axis.name : `(${axis.name})`;
  const chosen = piecesIn(axis, classes);
  if (chosen.length === axis.pieces.length) return null;
  const isRange = axis.pieces.some(({ is }) => is === "between");
  const loose = axis.pieces.filter(({ sample }) => !isRange || typeof sample !== "number");
  const picked = loose.filter((piece) => chosen.includes(axis.pieces.indexOf(piece)));
  const others = picked.some(({ is }) => is === "other");
  const named = others ? loose.filter((piece) => !picked.includes(piece)) : picked;
  const values = listed(named.map(({ sample }) => String(sample)));
  return listed([
    ...(isRange ? runsOf(axis, chosen).map((run) => printRun(name, ...run)) : []),
    ...(picked.length > 0 ? [`${name} ${others ? "≠" : "="} ${values}`] : []),
  ]);
};

/** A box in plain signs, one entry to each input that it narrows, and a combination out of it. */
export const printBox = (
  axes: readonly Axis[],
  box: Box,
): { readonly where: readonly string[]; readonly inputs: readonly string[] } => {
  const sides = axes.map((axis, index) => printSide(axis, box[index] ?? new Uint32Array()));
  const where = sides.filter((side) => side !== null);
  const samples: readonly Scalar[] = axes.map((axis, index) =>
    sampleOf(axis, box[index] ?? new Uint32Array()),
  );
  return {
    where: where.length > 0 ? where : axes.map(({ name }) => name),
    inputs: samples.map(String),
  };
};
