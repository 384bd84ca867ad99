import type { ValueDefinition } from "../checklist/meta-schema.ts";
import { compileFormula } from "../formulas/compile.ts";
import {
  type Failure,
  type FormulaContext,
  type FormulaEngine,
  failure,
  isFailure,
  type NameTypes,
  type Scalar,
} from "../formulas/engine-type.ts";
import { isLookUpFailure, lookUp } from "../tables/look-up.ts";
import type { Unit } from "../units/unit.ts";
import { convert, fitsUnit, sameUnit, unitOf } from "../units/units.ts";

/** What an expression may ask of the judging under way. */
export interface Names {
  readonly context: FormulaContext;
  /** Puts what these full names stand for into the context. */
  need(names: readonly string[]): void;
  /** A named value of the checklist. */
  value(name: string): Scalar | Failure;
}

/** Something that comes to a value during a run. */
export interface Expression {
  readonly source: string;
  evaluate(run: Names): Scalar | Failure;
  /** The arithmetic with its numbers, where there is any. */
  working?(run: Names): string;
  /** The value when it needs no run. */
  readonly constant?: number;
}

const always = (source: string, outcome: Failure): Expression => ({
  source,
  evaluate: () => outcome,
});

export const constant = (value: number): Expression => ({
  source: String(value),
  evaluate: () => value,
  constant: value,
});

export const unitNamed = (code: string | undefined): Unit | undefined =>
  code === undefined ? undefined : unitOf(code);

/**
 * The expression's number in another unit: as it is where either is unknown, as plain numbers are.
 * Anything but a number is left alone.
 */
export function convertedTo(
  expression: Expression,
  from: Unit | null | undefined,
  to: Unit | undefined,
): Expression {
  if (!from || to === undefined || sameUnit(from, to)) return expression;
  const impossible = failure("unit-not-convertible", { unit: from.code, to: to.code });
  const fits = fitsUnit(from, to);
  const turn = (value: Scalar | Failure) =>
    typeof value === "number"
      ? ((fits ? convert(value, from.code, to.code) : undefined) ?? impossible)
      : value;
  if (expression.constant !== undefined) {
    const value = turn(expression.constant);
    return typeof value === "number"
      ? { ...expression, constant: value, evaluate: () => value }
      : { source: expression.source, evaluate: () => value };
  }
  return { ...expression, evaluate: (run) => turn(expression.evaluate(run)) };
}

/** What compiles the formulas of one checklist; a formula that is refused fails whenever it is asked. */
export class Compiler {
  readonly #engine: FormulaEngine | undefined;
  readonly #names: NameTypes;

  constructor(engine: FormulaEngine | undefined, names: NameTypes) {
    this.#engine = engine;
    this.#names = names;
  }

  /** @throws Error when it takes an engine and there is none. */
  formula(source: string, to?: Unit): Expression {
    const compiled = compileFormula(source, this.#names, undefined, this.#engine);
    if (!compiled.ok) {
      const cause = compiled.problems[0]?.code ?? "unknown";
      return always(source, failure("formula-refused", { formula: source, cause }));
    }
    const formula = compiled.value;
    const expression: Expression = {
      source,
      evaluate: (run) => {
        run.need(formula.names);
        return formula.evaluate(run.context);
      },
      working: (run) => {
        run.need(formula.names);
        return formula.working(run.context);
      },
    };
    return convertedTo(expression, formula.unit, to);
  }

  value(definition: ValueDefinition): Expression {
    const { const: fixed, formula, table, unit } = definition;
    if (unit !== undefined && unitOf(unit) === undefined)
      return always("", failure("unit-not-convertible", { unit, to: null }));
    if (fixed !== undefined) return constant(fixed);
    if (formula !== undefined) return this.formula(formula, unitNamed(unit));
    if (table === undefined) return always("", failure("missing", { name: "value" }));
    const inputs = table.inputs.map((source) => this.formula(source));
    return {
      source: "",
      evaluate: (run) => {
        const hit = lookUp(
          table,
          inputs.map((input) => input.evaluate(run)),
        );
        return isLookUpFailure(hit) ? hit : hit.value;
      },
    };
  }
}

/** A number or the failure that stands in its place. */
export function numberOf(expression: Expression, run: Names): number | Failure {
  const outcome = expression.evaluate(run);
  if (isFailure(outcome)) return outcome;
  if (typeof outcome !== "number")
    return failure("wrong-type", { name: expression.source, expected: "number" });
  return Number.isFinite(outcome)
    ? outcome
    : failure("not-finite", { operation: expression.source });
}
