import type { TableCell, TableDefinition } from "../checklist/meta-schema.ts";
import { type Failure, failure, isFailure, type Scalar } from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";

export type LookUp = { readonly value: number | string; readonly rule: number };

const same = (a: Scalar, b: Scalar): boolean =>
  typeof a === "number" && typeof b === "number"
    ? roundSignificant(a) === roundSignificant(b)
    : a === b;

/** Whether a value fits one cell: a value, a list of values, a range, or "any". */
export const cellMatches = (cell: TableCell, input: Scalar): boolean => {
  if (Array.isArray(cell)) return cell.some((value) => same(value, input));
  if (typeof cell !== "object") return same(cell as Scalar, input);
  if (cell.any === true) return true;
  if (typeof input !== "number" || !Number.isFinite(input)) return false;
  const value = roundSignificant(input);
  return (
    (cell.min === undefined || value >= roundSignificant(cell.min)) &&
    (cell.max === undefined || value <= roundSignificant(cell.max)) &&
    (cell.exclusiveMin === undefined || value > roundSignificant(cell.exclusiveMin)) &&
    (cell.exclusiveMax === undefined || value < roundSignificant(cell.exclusiveMax))
  );
};

/**
 * Reads a decision table by its OMG DMN hit policy. No matching rule, rules that disagree, or an
 * input that is missing is a failure, never a default; `rule` is the position of the rule that hit.
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
    known.push(input);
  }
  const hits: number[] = [];
  for (const [index, rule] of table.rules.entries()) {
    const fits = known.every((input, column) => {
      const cell = rule.when[column];
      return cell !== undefined && cellMatches(cell, input);
    });
    if (!fits) continue;
    if (table.policy === "first") return { value: rule.then, rule: index };
    hits.push(index);
  }
  const first = hits[0];
  const value = first === undefined ? undefined : table.rules[first]?.then;
  if (first === undefined || value === undefined) {
    return failure("no-rule", { inputs: known.map(String) });
  }
  const agree =
    table.policy === "any"
      ? hits.every((hit) => same(table.rules[hit]?.then ?? "", value))
      : hits.length === 1;
  return agree
    ? { value, rule: first }
    : failure("rules-conflict", { rules: hits.map((n) => n + 1) });
};

/** Tells a failed look-up from a value. */
export const isLookUpFailure = (outcome: LookUp | Failure): outcome is Failure => "code" in outcome;
