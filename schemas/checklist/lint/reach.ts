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

/** One name of a condition, everything it can be, and where the condition looks for it. */
interface Choice {
  readonly name: string;
  readonly domain: readonly Scalar[];
  readonly part: Record<string, Scalar>;
}

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
    const asset: Record<string, Scalar> = Object.create(null);
    const answers: Record<string, Scalar> = Object.create(null);
    const choices: Choice[] = [];
    let combinations = 1;
    for (const full of formula.names) {
      const [part, name] = full.split(".");
      const domain = domainOf(this.#names.types.get(full));
      if (name === undefined || !domain) return false;
      choices.push({ name, domain, part: part === "asset" ? asset : answers });
      combinations *= domain.length;
      if (combinations > MOST_COMBINATIONS) return false;
    }
    const context: FormulaContext = { asset, answers, values: Object.create(null) };
    for (let number = 0; number < combinations; number += 1) {
      if (this.#left === 0) return false;
      this.#left -= 1;
      // Each combination is a number, a digit for every name.
      let rest = number;
      for (const { name, domain, part } of choices) {
        const value = domain[rest % domain.length];
        if (value !== undefined) part[name] = value;
        rest = Math.floor(rest / domain.length);
      }
      if (formula.evaluate(context) !== false) return false;
    }
    return true;
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
