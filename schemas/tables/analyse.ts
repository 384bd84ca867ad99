import type { TableDefinition } from "../checklist/meta-schema.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { type Axis, axesOf, type Budget } from "./axis.ts";
import { bitsFrom, countShared, firstWhere, shared } from "./bits.ts";
import type { TableInput } from "./domain.ts";
import { isAny, sameOutcome } from "./look-up.ts";
import { mergeBoxes, printBox } from "./regions.ts";
import { type Box, type Fault, Search } from "./search.ts";
import { shapeProblems } from "./shape.ts";

/** What looking through all tables of one checklist may take: about a second of a slow machine. */
const MAX_STEPS = 60_000_000;
/** Boxes that one search collects before they are put together. */
const MAX_BOXES = 400;
/** Holes, or overlaps, that are told one by one. */
const MAX_TOLD = 20;

export const tableBudget = (): Budget => ({ steps: MAX_STEPS });

class TooLarge extends Error {}

class Analysis {
  readonly #table: TableDefinition;
  readonly #axes: readonly Axis[];
  readonly #budget: Budget;
  readonly #all: Box;
  #isCut = false;

  constructor(table: TableDefinition, axes: readonly Axis[], budget: Budget) {
    this.#budget = budget;
    this.#table = table;
    this.#axes = axes;
    this.#all = axes.map(({ classes }) => bitsFrom([...classes.keys()], classes.length));
  }

  #boxOf(rule: number): Box {
    return this.#axes.map((axis) => axis.rules[rule] ?? bitsFrom([], axis.classes.length));
  }

  /** Whether some of what was found is left untold. */
  get isCut(): boolean {
    return this.#isCut;
  }

  /** Every combination of inputs that fewer or more rules fit than should. */
  faults(code: string, fault: Fault, params: Problem["params"] = {}): readonly Problem[] {
    const rules = [...this.#table.rules.keys()];
    const search = new Search(this.#axes, fault, this.#budget, MAX_BOXES).run(this.#all, rules);
    if (this.#budget.steps <= 0) throw new TooLarge();
    const boxes = mergeBoxes(search.found, this.#axes);
    if (search.found.length === MAX_BOXES || boxes.length > MAX_TOLD) this.#isCut = true;
    return boxes
      .slice(0, MAX_TOLD)
      .map((box) => problem("", code, { ...params, ...printBox(this.#axes, box) }));
  }

  #meet(first: number, second: number): boolean {
    this.#budget.steps -= this.#axes.length;
    if (this.#budget.steps <= 0) throw new TooLarge();
    return this.#axes.every(({ rules }) => {
      const [one, other] = [rules[first], rules[second]];
      return one !== undefined && other !== undefined && firstWhere(one, other, true) >= 0;
    });
  }

  /** Every two rules that fit one combination of inputs and may not. */
  overlaps(): readonly Problem[] {
    const { rules, policy } = this.#table;
    const problems: Problem[] = [];
    for (const [second, { then }] of rules.entries()) {
      for (let first = 0; first < second; first += 1) {
        if (policy === "any" && sameOutcome(rules[first]?.then, then)) continue;
        if (!this.#meet(first, second)) continue;
        const box = this.#boxOf(first).map((classes, axis) =>
          shared(classes, this.#axes[axis]?.rules[second] ?? classes),
        );
        if (problems.length === MAX_TOLD) {
          this.#isCut = true;
          return problems;
        }
        const params = { rules: [first + 1, second + 1], ...printBox(this.#axes, box) };
        problems.push(problem("", "table-overlap", params));
      }
    }
    return problems;
  }

  /** Rules that no input can reach: outside what inputs can be, or behind earlier rules. */
  unreachable(): readonly Problem[] {
    const { rules, policy } = this.#table;
    return rules.flatMap((rule, row) => {
      const box = this.#boxOf(row);
      const outside = box.some((classes) => countShared(classes, classes) === 0);
      // The last row of a first-match table has to be there, even where the others leave nothing.
      const behind = policy === "first" && !(row === rules.length - 1 && rule.when.every(isAny));
      if (!outside && !(behind && this.#isBehind(box, row))) return [];
      return [problem(at("/rules", row), "table-row-unreachable", { row: row + 1 })];
    });
  }

  #isBehind(box: Box, row: number): boolean {
    const fault = { is: "fewer", than: 1 } as const;
    const earlier = [...this.#table.rules.keys()].slice(0, row);
    const search = new Search(this.#axes, fault, this.#budget, 1).run(box, earlier);
    if (this.#budget.steps <= 0) throw new TooLarge();
    return search.found.length === 0;
  }

  coverage(): readonly Problem[] {
    const { policy, expect: expected = 1 } = this.#table;
    switch (policy) {
      case "first":
        return [];
      case "unique":
      case "any":
        return [...this.faults("table-hole", { is: "fewer", than: 1 }), ...this.overlaps()];
      case "collect":
        return [
          ...this.faults("table-too-few-hits", { is: "fewer", than: expected }, { expected }),
          ...this.faults("table-too-many-hits", { is: "more", than: expected }, { expected }),
        ];
    }
  }
}

/**
 * What is wrong with a table, as pointers into it. Holes, overlaps and rows out of reach are found
 * exactly, over everything the inputs can be as far as that is known, each input taken as free of
 * the others: every number at 12 significant digits, every listed value, and for texts without a
 * list any other text. `where` says a region in signs, `inputs` is a combination out of it. What several tables may take together
 * is one budget; where it ends, that is a problem of its own.
 */
export const tableProblems = (
  table: TableDefinition,
  inputs: readonly TableInput[] = [],
  budget: Budget = tableBudget(),
): readonly Problem[] => {
  const problems = shapeProblems(table, inputs);
  if (problems.length > 0) return problems;
  const axes = axesOf(table, inputs, budget);
  if (axes === null) return [problem("", "table-too-large-to-analyse")];
  // An input that can have no value is told as a fault of its own definition.
  if (axes.some(({ pieces }) => pieces.length === 0)) return [];
  try {
    const analysis = new Analysis(table, axes, budget);
    const told = [...analysis.coverage(), ...analysis.unreachable()];
    const more = analysis.isCut ? [problem("", "table-more-found", { shown: MAX_TOLD })] : [];
    return [...told, ...more];
  } catch (error) {
    if (error instanceof TooLarge) return [problem("", "table-too-large-to-analyse")];
    throw error;
  }
};
