import type { TableDefinition } from "../checklist/meta-schema.ts";
import type { Scalar } from "../formulas/engine-type.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { tableBudget } from "../tables/analyse.ts";
import { type Axis, axesOf } from "../tables/axis.ts";
import { addBit, type Bits, bitsOf, noBits, shared } from "../tables/bits.ts";
import type { TableInput } from "../tables/domain.ts";
import { sameOutcome } from "../tables/look-up.ts";
import { neverLonger } from "./never-longer.ts";

/** "up" and "down" for numbers, else every value from the mildest to the worst. */
export type Worse = "up" | "down" | readonly Scalar[];

/** Combinations of factors that are looked through: more would take a slow machine seconds. */
const MOST_COMBINATIONS = 400_000;

/** A factor from its mildest value to its worst; values that every rule treats alike are one. */
interface Scale {
  readonly name: string;
  readonly steps: readonly { readonly sample: Scalar; readonly rules: Bits }[];
}

function scaleOf(axis: Axis, name: string, worse: Worse, rules: number): Scale {
  const classOf = new Map(axis.classes.flatMap((members, at) => members.map((one) => [one, at])));
  const fits = axis.classes.map(() => noBits(rules));
  for (const [rule, classes] of axis.rules.entries())
    for (const index of bitsOf(classes)) addBit(fits[index] ?? noBits(rules), rule);
  const pieces = axis.pieces.map(({ sample }, at) => ({ sample, at: classOf.get(at) ?? 0 }));
  const rank = ({ sample }: { readonly sample: Scalar }) =>
    typeof worse === "string" ? Number(sample) * (worse === "up" ? 1 : -1) : worse.indexOf(sample);
  pieces.sort((a, b) => rank(a) - rank(b));
  const steps = pieces
    .filter(({ at }, index) => index === 0 || at !== pieces[index - 1]?.at)
    .map(({ sample, at }) => ({ sample, rules: fits[at] ?? noBits(rules) }));
  return { name, steps };
}

/** The rule whose outcome counts where these fit; -1 where none does, or they disagree. */
function decides({ policy, rules }: TableDefinition, fit: Bits): number {
  const hits = bitsOf(fit);
  const first = hits[0] ?? -1;
  if (policy === "first" || hits.length < 2) return first;
  const agree = hits.every((hit) => sameOutcome(rules[hit]?.then, rules[first]?.then));
  return policy === "any" && agree ? first : -1;
}

/** The deciding rule of every combination, the last factor running fastest. */
function decisions(table: TableDefinition, scales: readonly Scale[], all: Bits): Int16Array {
  const size = scales.reduce((product, { steps }) => product * steps.length, 1);
  const decided = new Int16Array(size);
  let next = 0;
  const visit = (depth: number, fit: Bits): void => {
    const scale = scales[depth];
    if (scale === undefined) {
      decided[next] = decides(table, fit);
      next += 1;
      return;
    }
    for (const { rules } of scale.steps) visit(depth + 1, shared(fit, rules));
  };
  visit(0, all);
  return decided;
}

/** The place of one combination on each scale. */
const placesOf = (scales: readonly Scale[], combination: number): readonly number[] => {
  let rest = combination;
  return scales
    .toReversed()
    .map(({ steps }) => {
      const place = rest % steps.length;
      rest = (rest - place) / steps.length;
      return place;
    })
    .toReversed();
};

function example(
  table: TableDefinition,
  scales: readonly Scale[],
  axis: number,
  mild: readonly [at: number, rule: number],
  worse: readonly [at: number, rule: number],
): Problem {
  const [from, to] = [placesOf(scales, mild[0]), placesOf(scales, worse[0])];
  const valueAt = (places: readonly number[], index: number) =>
    String(scales[index]?.steps[places[index] ?? 0]?.sample);
  return problem(at("/table/rules", worse[1], "then"), "risk-worse-is-longer", {
    name: scales[axis]?.name ?? "",
    mild: valueAt(from, axis),
    worse: valueAt(to, axis),
    milder: String(table.rules[mild[1]]?.then),
    longer: String(table.rules[worse[1]]?.then),
    where: scales.flatMap(({ name }, index) =>
      index === axis ? [] : [`${name}: ${valueAt(to, index)}`],
    ),
  });
}

/** The first place along one factor where a worse value gives more time; null where none does. */
function longerAlong(
  table: TableDefinition,
  scales: readonly Scale[],
  axis: number,
  decided: Int16Array,
): Problem | null {
  const steps = scales[axis]?.steps.length ?? 1;
  const stride = scales.slice(axis + 1).reduce((product, one) => product * one.steps.length, 1);
  const time = (rule: number) => String(table.rules[rule]?.then);
  for (let start = 0; start < decided.length; start += 1) {
    if (Math.floor(start / stride) % steps !== 0) continue;
    let mild: readonly [number, number] | undefined;
    for (let step = 0; step < steps; step += 1) {
      const place = start + step * stride;
      const rule = decided[place] ?? -1;
      if (rule < 0) continue;
      if (mild !== undefined && !neverLonger(time(rule), time(mild[1])))
        return example(table, scales, axis, mild, [place, rule]);
      mild = [place, rule];
    }
  }
  return null;
}

/**
 * Where a worse factor gives more time, one example to each factor: found by trying every
 * combination that the table tells apart. Every outcome is a duration.
 */
export function worseIsLonger(
  table: TableDefinition,
  names: readonly string[],
  orders: readonly Worse[],
  inputs: readonly TableInput[],
): readonly Problem[] {
  const axes = axesOf(table, inputs, tableBudget());
  const scales = axes?.map((axis, index) =>
    scaleOf(axis, names[index] ?? "", orders[index] ?? [], table.rules.length),
  );
  const size = scales?.reduce((product, { steps }) => product * steps.length, 1);
  if (scales === undefined || size === undefined || size > MOST_COMBINATIONS)
    return [problem("/table", "table-too-large-to-analyse")];
  const all = noBits(table.rules.length);
  for (const rule of table.rules.keys()) addBit(all, rule);
  const decided = decisions(table, scales, all);
  return scales.flatMap((_, axis) => longerAlong(table, scales, axis, decided) ?? []);
}
