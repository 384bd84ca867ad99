import { compileFormula } from "../../formulas/compile.ts";
import type {
  CompiledFormula,
  FormulaContext,
  FormulaEngine,
  NameType,
  Scalar,
} from "../../formulas/engine-type.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";

const MOST_COMBINATIONS = 4096;
/** For all the conditions of one document: some tenths of a second. */
const MOST_EVALUATIONS = 100_000;

/** Everything a name can be; null for a number or a free text. */
const domainOf = (type: NameType | undefined): readonly Scalar[] | null =>
  type?.type === "boolean" ? [true, false] : (type?.options ?? null);

const contextOf = (given: readonly (readonly [string, Scalar])[]): FormulaContext => {
  const part = (prefix: string) =>
    Object.assign(
      Object.create(null),
      Object.fromEntries(
        given.flatMap(([name, value]) =>
          name.startsWith(prefix) ? [[name.slice(prefix.length), value]] : [],
        ),
      ),
    );
  return { asset: part("asset."), answers: part("answers."), values: Object.create(null) };
};

/** Conditions that no particulars and answers fulfil, as far as all their names are enumerated. */
class Reach {
  #left = MOST_EVALUATIONS;
  readonly #names: ChecklistNames;
  readonly #engine: FormulaEngine;
  readonly #known = new Map<string, boolean>();

  constructor(names: ChecklistNames, engine: FormulaEngine) {
    this.#names = names;
    this.#engine = engine;
  }

  isNever(text: string): boolean {
    const known = this.#known.get(text);
    if (known !== undefined) return known;
    const result = compileFormula(text, this.#names.types, { type: "boolean" }, this.#engine);
    const never = result.ok && this.#alwaysFalse(result.value);
    this.#known.set(text, never);
    return never;
  }

  #alwaysFalse(formula: CompiledFormula): boolean {
    let combinations: readonly (readonly (readonly [string, Scalar])[])[] = [[]];
    for (const name of formula.names) {
      const domain = /^(asset|answers)\./.test(name) ? domainOf(this.#names.types.get(name)) : null;
      if (!domain || combinations.length * domain.length > MOST_COMBINATIONS) return false;
      combinations = combinations.flatMap((given) =>
        domain.map((value) => [...given, [name, value] as const]),
      );
    }
    this.#left -= combinations.length;
    if (this.#left < 0) return false;
    return combinations.every((given) => formula.evaluate(contextOf(given)) === false);
  }
}

/** Points that are never asked and limits that never apply. */
export const lintReach = (
  doc: Checklist,
  names: ChecklistNames,
  engine: FormulaEngine | undefined,
): readonly Problem[] => {
  if (!engine) return [];
  const reach = new Reach(names, engine);
  const never = (pointer: string, text: string | undefined, code: string) =>
    text !== undefined && reach.isNever(text) ? [problem(at(pointer, "when"), code)] : [];
  return Object.entries(doc.properties).flatMap(([name, { ask, limits = [] }]) => {
    const pointer = at("/properties", name);
    return [
      ...never(at(pointer, "ask"), ask?.when, "point-unreachable"),
      ...limits.flatMap(({ when }, index) =>
        never(at(pointer, "limits", index), when, "limit-unreachable"),
      ),
    ];
  });
};
