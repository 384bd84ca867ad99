import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";
import { type Failure, failure, isFailure, type Scalar } from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";

export type LookUp = { readonly value: number | string; readonly rule: number };

const rounded = (value: Scalar): Scalar =>
  typeof value === "number" ? roundSignificant(value) : value;

export const isAny = (cell: TableCell | undefined): boolean =>
  typeof cell === "object" && !Array.isArray(cell) && cell.any === true;

/**
 * The test of one cell: a value, a list of values, a range, or "any". It takes values as they are
 * compared, numbers rounded to 12 significant digits.
 */
export const cellTest = (cell: TableCell): ((value: Scalar) => boolean) => {
  if (Array.isArray(cell)) {
    const values = cell.map(rounded);
    return (value) => values.includes(value);
  }
  if (typeof cell !== "object") {
    const only = rounded(cell as Scalar);
    return (value) => value === only;
  }
  if (cell.any === true) return () => true;
  const min = roundSignificant(cell.min ?? Number.NEGATIVE_INFINITY);
  const max = roundSignificant(cell.max ?? Number.POSITIVE_INFINITY);
  const above = roundSignificant(cell.exclusiveMin ?? Number.NEGATIVE_INFINITY);
  const below = roundSignificant(cell.exclusiveMax ?? Number.POSITIVE_INFINITY);
  return (value) =>
    typeof value === "number" && value >= min && value <= max && value > above && value < below;
};

/** The least or greatest outcome of the declared number of rules; any other number is a failure. */
const collect = (table: TableDefinition, hits: readonly number[]): LookUp | Failure => {
  const { aggregate, expect: expected } = table;
  if (aggregate === undefined || expected === undefined || hits.length !== expected)
    return failure("hits-not-as-declared", { expected: expected ?? null, found: hits.length });
  let best: { readonly value: number; readonly rule: number } | undefined;
  for (const rule of hits) {
    const value = table.rules[rule]?.then;
    if (typeof value !== "number")
      return failure("wrong-type", { name: String(value), expected: "number" });
    const better =
      aggregate === "min" ? value < (best?.value ?? value) : value > (best?.value ?? value);
    if (best === undefined || better) best = { value, rule };
  }
  return best ?? failure("hits-not-as-declared", { expected, found: 0 });
};

/**
 * Reads a decision table by its OMG DMN hit policy. No matching rule, rules that disagree, more or
 * fewer rules than a collecting table declares, or an input that is missing is a failure, never a
 * default; `rule` is the position of the rule whose outcome it is.
 */
export const lookUp = (
  table: TableDefinition,
  inputs: readonly (Scalar | Failure | undefined)[],
): LookUp | Failure => {
  const known: Scalar[] = [];
  for (const [index, name] of table.inputs.entries()) {
    const input = inputs[index];
    if (isFailure(input)) return input;
    if (input === undefined) return failure("missing", { name });
    if (typeof input === "number" && !Number.isFinite(input))
      return failure("not-finite", { operation: name });
    known.push(rounded(input));
  }
  const hits: number[] = [];
  for (const [index, rule] of table.rules.entries()) {
    const fits = known.every((input, column) => {
      const cell = rule.when[column];
      return cell !== undefined && cellTest(cell)(input);
    });
    if (!fits) continue;
    if (table.policy === "first") return { value: rule.then, rule: index };
    hits.push(index);
  }
  if (table.policy === "collect") return collect(table, hits);
  const first = hits[0];
  const value = first === undefined ? undefined : table.rules[first]?.then;
  if (first === undefined || value === undefined)
    return failure("no-rule", { inputs: known.map(String) });
  const agree =
    table.policy === "any"
      ? hits.every((hit) => sameOutcome(table.rules[hit]?.then, value))
      : hits.length === 1;
  return agree
    ? { value, rule: first }
    : failure("rules-conflict", { rules: hits.map((n) => n + 1) });
};

/** Whether two rules say the same, numbers compared at 12 significant digits. */
export const sameOutcome = (a: Scalar | undefined, b: Scalar | undefined): boolean =>
  a !== undefined && b !== undefined && rounded(a) === rounded(b);

/** Tells a failed look-up from a value. */
export const isLookUpFailure = (outcome: LookUp | Failure): outcome is Failure => "code" in outcome;
