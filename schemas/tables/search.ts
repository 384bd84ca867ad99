import type { Axis, Budget } from "./axis.ts";
import {
  addBit,
  type Bits,
  bitsOf,
  countShared,
  firstWhere,
  hasBit,
  noBits,
  shared,
} from "./bits.ts";

/** Some of the combinations of inputs: of each axis a set of its classes. */
export type Box = readonly Bits[];

/** Fewer than `than` rules fit, or more. */
export interface Fault {
  readonly is: "fewer" | "more";
  readonly than: number;
}

/** Rules of a box that fit part of it: along one axis only (`slabs`), or along several (`mixed`). */
interface Parts {
  readonly sure: number;
  readonly slabs: readonly { readonly rule: number; readonly axis: number }[];
  readonly mixed: readonly number[];
}

/**
 * Finds every combination of inputs that too few or too many rules fit, as boxes that share none.
 * A box is halved until each rule in it fits all of it, none, or is bounded along a single axis, as
 * M. H. Overmars and C.-K. Yap do for the measure of a union of boxes (SIAM J. Comput. 20, 1991):
 * the work grows with the square of the rules for four inputs, however the rules lie.
 */
export class Search {
  readonly found: Box[] = [];
  readonly #axes: readonly Axis[];
  readonly #fault: Fault;
  readonly #budget: Budget;
  readonly #most: number;
  readonly #words: number;

  /** Stops at `most` boxes, or when the steps of the budget are used up. */
  constructor(axes: readonly Axis[], fault: Fault, budget: Budget, most: number) {
    this.#axes = axes;
    this.#fault = fault;
    this.#budget = budget;
    this.#most = most;
    this.#words = axes.reduce((sum, { classes }) => sum + noBits(classes.length).length, 0);
  }

  run(box: Box, rules: readonly number[]): this {
    this.#visit(box, rules, 0);
    return this;
  }

  #cell(rule: number, axis: number): Bits {
    return this.#axes[axis]?.rules[rule] ?? noBits(0);
  }

  #parts(box: Box, rules: readonly number[], before: number): Parts {
    const sizes = box.map((classes) => countShared(classes, classes));
    const slabs: { rule: number; axis: number }[] = [];
    const mixed: number[] = [];
    let sure = before;
    for (const rule of rules) {
      let partial = 0;
      let last = -1;
      for (const [axis, classes] of box.entries()) {
        const fits = countShared(classes, this.#cell(rule, axis));
        if (fits === 0) partial = Number.POSITIVE_INFINITY;
        if (fits === 0) break;
        if (fits < (sizes[axis] ?? 0)) [partial, last] = [partial + 1, axis];
      }
      if (partial === 0) sure += 1;
      else if (partial === 1) slabs.push({ rule, axis: last });
      else if (Number.isFinite(partial)) mixed.push(rule);
    }
    this.#budget.steps -= (rules.length + 4) * (this.#words + 8 * box.length);
    return { sure, slabs, mixed };
  }

  #visit(box: Box, rules: readonly number[], before: number): void {
    if (this.#budget.steps <= 0 || this.found.length >= this.#most) return;
    const { sure, slabs, mixed } = this.#parts(box, rules, before);
    const { is, than } = this.#fault;
    const possible = sure + slabs.length + mixed.length;
    if (is === "fewer" ? sure >= than : possible <= than) return;
    if (is === "fewer" ? possible < than : sure > than) {
      this.found.push(box);
      return;
    }
    const counts = this.#counts(box, slabs);
    const live = [...slabs.map(({ rule }) => rule), ...mixed];
    if (is === "fewer") {
      const left = box.map((classes, axis) => this.#below(classes, counts[axis], than - sure));
      if (left.some((classes) => countShared(classes, classes) === 0)) return;
      const less = left.some((classes, axis) => classes !== box[axis]);
      if (less) {
        this.#visit(left, live, sure);
        return;
      }
    }
    if (mixed.length === 0) this.#levels(box, counts, 0, sure);
    else for (const half of this.#halves(box, mixed)) this.#visit(half, live, sure);
  }

  /** Of each class of each axis, how many slabs fit it. */
  #counts(box: Box, slabs: Parts["slabs"]): readonly Uint16Array[] {
    const counts = this.#axes.map(({ classes }) => new Uint16Array(classes.length));
    this.#budget.steps -= 16 * this.#words;
    for (const { rule, axis } of slabs)
      for (const index of bitsOf(shared(box[axis] ?? noBits(0), this.#cell(rule, axis)))) {
        const row = counts[axis];
        if (row) row[index] = (row[index] ?? 0) + 1;
        this.#budget.steps -= 1;
      }
    return counts;
  }

  /** The classes that fewer than `than` slabs fit; the same set when those are all. */
  #below(classes: Bits, counts: Uint16Array | undefined, than: number): Bits {
    const members = bitsOf(classes);
    const kept = members.filter((index) => (counts?.[index] ?? 0) < than);
    if (kept.length === members.length) return classes;
    const left = noBits(counts?.length ?? 0);
    for (const index of kept) addBit(left, index);
    return left;
  }

  /** Where all rules are slabs their counts add up: axis by axis, classes of one count together. */
  #levels(box: Box, counts: readonly Uint16Array[], axis: number, sum: number): void {
    if (this.#budget.steps <= 0 || this.found.length >= this.#most) return;
    const { is, than } = this.#fault;
    if (is === "fewer" && sum >= than) return;
    const classes = box[axis];
    if (classes === undefined) {
      if (is === "fewer" || sum > than) this.found.push(box);
      return;
    }
    const levels = new Map<number, Bits>();
    for (const index of bitsOf(classes)) {
      const count = counts[axis]?.[index] ?? 0;
      const level = levels.get(count) ?? noBits(this.#axes[axis]?.classes.length ?? 0);
      addBit(level, index);
      levels.set(count, level);
    }
    this.#budget.steps -= (levels.size + 4) * classes.length;
    for (const [count, level] of levels)
      this.#levels(box.with(axis, level), counts, axis + 1, sum + count);
  }

  /** Two halves, cut at the median edge of the rules along the axis that bounds most of them. */
  #halves(box: Box, mixed: readonly number[]): readonly Box[] {
    let best: { readonly axis: number; readonly edges: readonly number[] } = { axis: 0, edges: [] };
    for (const [axis, classes] of box.entries()) {
      const start = firstWhere(classes, classes, true);
      const edges = mixed.flatMap((rule) => {
        const cell = this.#cell(rule, axis);
        const edge = firstWhere(classes, cell, !hasBit(cell, start));
        return edge < 0 ? [] : [edge];
      });
      if (edges.length > best.edges.length) best = { axis, edges };
    }
    const { axis, edges } = best;
    const edge = edges.toSorted((a, b) => a - b)[edges.length >> 1] ?? 0;
    const classes = box[axis] ?? noBits(0);
    const [low, high] = [noBits(classes.length * 32), noBits(classes.length * 32)];
    for (const index of bitsOf(classes)) addBit(index < edge ? low : high, index);
    return [box.with(axis, low), box.with(axis, high)];
  }
}
