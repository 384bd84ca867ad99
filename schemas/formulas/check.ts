import { nearest, type WordBudget, wordBudget } from "../shared/nearest.ts";
import { type Problem, problem, type Result } from "../shared/problem.ts";
import type { Unit } from "../units/unit.ts";
import { fitsUnit, sameUnit } from "../units/units.ts";
import { combineUnits } from "./check-units.ts";
import type { Expected, NameTypes, ScalarType } from "./engine-type.ts";
import type { Node, Place } from "./tree.ts";

interface Kind {
  readonly type: ScalarType;
  readonly unit: Unit | null;
}
export interface Checked extends Kind {
  readonly used: readonly string[];
}

const BOOLEAN: Kind = { type: "boolean", unit: null };
const at = ({ start, end }: Place) => ({ start, end });

/** The last word of a full name: "length" of "asset.length". */
const lastWord = (name: string): string => name.slice(name.lastIndexOf(".") + 1);

/** All formulas over the same names share one budget for suggestions. */
const budgets = new WeakMap<NameTypes, WordBudget>();
const budgetOf = (names: NameTypes): WordBudget => {
  const budget = budgets.get(names) ?? wordBudget();
  budgets.set(names, budget);
  return budget;
};

/** The same word in another place comes before a word that looks alike. */
const nearestName = (name: string, names: NameTypes): string | null => {
  const budget = budgetOf(names);
  budget.steps -= names.size * name.length;
  if (budget.steps < 0) return null;
  const known = [...names.keys()];
  const last = lastWord(name);
  return known.find((candidate) => lastWord(candidate) === last) ?? nearest(name, known, budget);
};

/** One walk that finds unknown names, types and units; null stands for what already has a problem. */
class Check {
  readonly problems: Problem[] = [];
  readonly used = new Set<string>();
  readonly names: NameTypes;

  constructor(names: NameTypes) {
    this.names = names;
  }

  kindOf(node: Node): Kind | null {
    switch (node.kind) {
      case "literal":
        return { type: typeof node.value as ScalarType, unit: null };
      case "name":
        return this.name(node.name, node);
      case "negate":
        return this.need(node.operand, "number");
      case "not":
        return this.need(node.operand, "boolean");
      case "and":
      case "or": {
        const sides = [this.need(node.left, "boolean"), this.need(node.right, "boolean")];
        return sides.includes(null) ? null : BOOLEAN;
      }
      case "arithmetic": {
        const left = this.need(node.left, "number");
        const right = this.need(node.right, "number");
        if (!left || !right) return null;
        const unit = combineUnits(node.op, left.unit, right.unit);
        return unit === undefined ? this.units(left, right, node) : { type: "number", unit };
      }
      case "ordering": {
        const left = this.need(node.left, "number");
        const right = this.need(node.right, "number");
        return left && right && this.same(left, right, node.right) && BOOLEAN;
      }
      case "equality":
        return this.compared(node.left, [node.right]);
      case "in":
        return this.compared(node.left, node.list);
      case "choose": {
        const test = this.need(node.test, "boolean");
        const branch = this.alike([node.yes, node.no]);
        return test && branch;
      }
      case "call":
        return this.alike(node.args, "number");
    }
  }

  need(node: Node, type: ScalarType): Kind | null {
    const kind = this.kindOf(node);
    if (!kind || kind.type === type) return kind;
    return this.report("type-mismatch", { expected: type, found: kind.type, ...at(node) });
  }

  /** All of one type and unit; a plain number takes the unit of the others. */
  alike(nodes: readonly Node[], type?: ScalarType): Kind | null {
    let kind: Kind | null = null;
    let sound = true;
    for (const node of nodes) {
      const next = type ? this.need(node, type) : this.kindOf(node);
      const joined: Kind | null = next && kind ? this.same(kind, next, node) : next;
      if (joined) kind = joined;
      else sound = false;
    }
    return sound ? kind : null;
  }

  compared(left: Node, others: readonly Node[]): Kind | null {
    const kind = this.alike([left, ...others]);
    if (!kind) return null;
    for (const other of others) {
      this.option(left, other);
      this.option(other, left);
    }
    return BOOLEAN;
  }

  same(left: Kind, right: Kind, place: Place): Kind | null {
    if (left.type !== right.type) {
      const params = { expected: left.type, found: right.type, ...at(place) };
      return this.report("type-mismatch", params);
    }
    if (left.unit && right.unit && !sameUnit(left.unit, right.unit)) {
      return this.units(left, right, place);
    }
    return left.unit ? left : right;
  }

  units(left: Kind, right: Kind, place: Place): null {
    const params = {
      expected: left.unit?.code ?? "1",
      found: right.unit?.code ?? "1",
      ...at(place),
    };
    return this.report("unit-mismatch", params);
  }

  /** A text compared with a name that can never be it is a slip that would hide a question. */
  option(named: Node, text: Node): void {
    if (named.kind !== "name" || text.kind !== "literal" || typeof text.value !== "string") return;
    const options = this.names.get(named.name)?.options;
    if (!options || options.includes(text.value)) return;
    const near = nearest(text.value, options, budgetOf(this.names));
    const params = { name: named.name, value: text.value, nearest: near, ...at(text) };
    this.report("not-an-option", params);
  }

  name(name: string, place: Place): Kind | null {
    const known = this.names.get(name);
    if (!known) {
      const near = nearestName(name, this.names);
      return this.report("unknown-name", { name, nearest: near, ...at(place) });
    }
    this.used.add(name);
    return { type: known.type, unit: known.unit ?? null };
  }

  report(code: string, params: Problem["params"]): null {
    this.problems.push(problem("", code, params));
    return null;
  }
}

/** Checks names, types and units of a formula; problems carry their place in its text. */
export const checkTree = (tree: Node, names: NameTypes, expected: Expected): Result<Checked> => {
  const check = new Check(names);
  const kind = check.kindOf(tree);
  if (kind && expected.type && kind.type !== expected.type) {
    const params = { expected: expected.type, found: kind.type, ...at(tree) };
    check.report("type-mismatch", params);
  } else if (kind?.unit && expected.unit && !fitsUnit(kind.unit, expected.unit)) {
    check.units({ type: "number", unit: expected.unit }, kind, tree);
  }
  if (!kind || check.problems.length > 0) return { ok: false, problems: check.problems };
  return { ok: true, value: { ...kind, used: [...check.used] } };
};
