import type { DateBound } from "../checklist/limit-schema.ts";
import type { LimitDefinition, PointDefinition } from "../checklist/meta-schema.ts";
import { parseCivilDate } from "../due/civil.ts";
import { addDuration, subtractDuration } from "../due/duration.ts";
import { failure, isFailure, type NameTypes } from "../formulas/engine-type.ts";
import type { CivilDate } from "../shared/ids.ts";
import { roundSignificant } from "../shared/significant.ts";
import type { Unit } from "../units/unit.ts";
import { differenceUnit } from "../units/units.ts";
import type { NumberBound } from "./compare.ts";
import { type Compiler, convertedTo, type Expression, unitNamed } from "./expression.ts";
import type { Days, PreparedBound, PreparedDecision, PreparedLimit } from "./prepared.ts";

const NUMBER_BOUNDS = ["min", "exclusiveMin", "max", "exclusiveMax"] as const;
const DATE_BOUNDS = ["notBefore", "notAfter"] as const;

/** The day a bound on a date stands for; a failure where it hangs on a day that is not known. */
function dayOf(bound: DateBound): (run: Days) => number | ReturnType<typeof failure> {
  if (typeof bound === "string") {
    const day = parseCivilDate(bound);
    return () => day ?? failure("wrong-type", { name: bound, expected: "date" });
  }
  const { from: name, plus, minus } = bound;
  return (run) => {
    const day = run.day(name);
    if (isFailure(day)) return day;
    // Taken off first: a month less a day before 29 March is 1 March, not 28 February.
    const from = day as CivilDate;
    const earlier = minus === undefined ? from : subtractDuration(from, minus);
    return plus === undefined ? earlier : addDuration(earlier, plus);
  };
}

/** Works the limits of points out as far as no answer is needed. */
export class LimitPreparer {
  readonly #compiler: Compiler;
  readonly #names: NameTypes;
  readonly #values: ReadonlyMap<string, Expression>;

  constructor(compiler: Compiler, names: NameTypes, values: ReadonlyMap<string, Expression>) {
    this.#compiler = compiler;
    this.#names = names;
    this.#values = values;
  }

  /** A number, a named value or a formula, in the unit it is needed in. */
  number(bound: number | string, to: Unit | undefined): Expression {
    if (typeof bound === "number") return { source: "", evaluate: () => bound, constant: bound };
    const value = this.#values.get(bound);
    if (value === undefined) return this.#compiler.formula(bound, to);
    const named: Expression =
      value.constant === undefined
        ? { ...value, source: bound, evaluate: (run) => run.value(bound) }
        : value;
    return convertedTo(named, this.#names.get(bound)?.unit, to);
  }

  #bound(kind: NumberBound, bound: number | string, unit: string): PreparedBound {
    const of = this.number(bound, unitNamed(unit));
    const fixed = of.constant === undefined ? undefined : roundSignificant(of.constant);
    return { kind, fixed, of };
  }

  #decision(limit: LimitDefinition, steps: Unit | undefined): PreparedDecision | undefined {
    const { rule, uncertainty, guardFactor = 1 } = limit.decision ?? {};
    if (rule === undefined || rule === "simple") return undefined;
    return {
      rule,
      uncertainty: uncertainty === undefined ? undefined : this.number(uncertainty, steps),
      factor: guardFactor,
    };
  }

  limits({ limits = [], quantity }: PointDefinition): readonly PreparedLimit[] {
    // A grade or a count is a plain number: a bound in ohms says nothing of it.
    const unit = quantity?.unit ?? "1";
    const whole = unitNamed(unit);
    const steps = whole && differenceUnit(whole);
    return limits.map((limit, index) => {
      const bounds: PreparedBound[] = NUMBER_BOUNDS.flatMap((kind) => {
        const bound = limit[kind];
        return bound === undefined ? [] : [this.#bound(kind, bound, unit)];
      });
      const { accept, sameAsLast } = limit;
      if (accept !== undefined)
        bounds.push({
          kind: "accept",
          accepted: new Set<unknown>(accept),
          accept: accept.map(String),
        });
      for (const kind of DATE_BOUNDS) {
        const bound = limit[kind];
        if (bound !== undefined) bounds.push({ kind, day: dayOf(bound) });
      }
      if (sameAsLast !== undefined)
        bounds.push({
          kind: "sameAsLast",
          within: this.number(sameAsLast.within, steps),
          whenNone: sameAsLast.whenNone ?? "undecided",
        });
      return {
        index,
        severity: limit.severity ?? "fail",
        when: limit.when === undefined ? undefined : this.#compiler.formula(limit.when),
        bounds,
        decision: this.#decision(limit, steps),
        basis: limit.basis,
      };
    });
  }
}
