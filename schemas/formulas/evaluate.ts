import { roundSignificant } from "../shared/significant.ts";
import {
  type Failure,
  type FormulaContext,
  failure,
  type NameTypes,
  type Scalar,
} from "./engine-type.ts";
import { readName } from "./read-name.ts";
import type { Arithmetic, FunctionName, Node, Ordering } from "./tree.ts";

type Evaluate = (context: FormulaContext) => Scalar | Failure;

const NOT_FINITE: Readonly<Record<string, Failure>> = Object.fromEntries(
  ["+", "-", "*", "/", "round"].map((operation) => [
    operation,
    failure("not-finite", { operation }),
  ]),
);
const finite = (value: number, operation: string): number | Failure =>
  Number.isFinite(value) ? value : (NOT_FINITE[operation] ?? failure("not-finite", { operation }));

const OPERATIONS: Record<Arithmetic, (a: number, b: number) => number> = {
  "+": (a, b) => a + b,
  "-": (a, b) => a - b,
  "*": (a, b) => a * b,
  "/": (a, b) => a / b,
};
const ORDER: Record<Ordering, (a: number, b: number) => boolean> = {
  "<": (a, b) => a < b,
  "<=": (a, b) => a <= b,
  ">": (a, b) => a > b,
  ">=": (a, b) => a >= b,
};
const CALLS: Record<FunctionName, (args: readonly number[]) => number> = {
  min: (args) => Math.min(...args),
  max: (args) => Math.max(...args),
  abs: ([a = 0]) => Math.abs(a),
  round: ([a = 0]) => roundHalfAway(a),
};

/** 2.5 gives 3 and −2.5 gives −3; digits past the 12th do not count, so 0.145 × 100 gives 15. */
const roundHalfAway = (value: number): number =>
  Math.sign(value) * Math.floor(roundSignificant(Math.abs(value)) + 0.5);

/** A checked tree as nested functions: types are known, so anything but the type is a failure. */
export const evaluator = (node: Node, names: NameTypes): Evaluate => {
  const part = (child: Node) => evaluator(child, names);
  switch (node.kind) {
    case "literal": {
      const { value } = node;
      return () => value;
    }
    case "name":
      return readName(node.name, names);
    case "negate": {
      const operand = part(node.operand);
      return (context) => {
        const value = operand(context);
        return typeof value === "number" ? -value : value;
      };
    }
    case "not": {
      const operand = part(node.operand);
      return (context) => {
        const value = operand(context);
        return typeof value === "boolean" ? !value : value;
      };
    }
    case "arithmetic": {
      const { op } = node;
      const operate = OPERATIONS[op];
      return numbers(part(node.left), part(node.right), (a, b) => finite(operate(a, b), op));
    }
    case "ordering":
      return numbers(part(node.left), part(node.right), ORDER[node.op]);
    case "equality":
      return equality(part(node.left), part(node.right), node.op === "==");
    case "and":
      return decisive(part(node.left), part(node.right), false);
    case "or":
      return decisive(part(node.left), part(node.right), true);
    case "choose":
      return choose(part(node.test), part(node.yes), part(node.no));
    case "in":
      return membership(part(node.left), node.list.map(part));
    case "call":
      return call(node.name, node.args.map(part));
  }
};

const numbers =
  (
    left: Evaluate,
    right: Evaluate,
    operate: (a: number, b: number) => Scalar | Failure,
  ): Evaluate =>
  (context) => {
    const a = left(context);
    if (typeof a !== "number") return a;
    const b = right(context);
    return typeof b === "number" ? operate(a, b) : b;
  };

const equality =
  (left: Evaluate, right: Evaluate, wanted: boolean): Evaluate =>
  (context) => {
    const a = left(context);
    if (typeof a === "object") return a;
    const b = right(context);
    return typeof b === "object" ? b : (a === b) === wanted;
  };

/** As CEL has it: a side that decides alone makes a failure of the other side irrelevant. */
const decisive =
  (left: Evaluate, right: Evaluate, decider: boolean): Evaluate =>
  (context) => {
    const a = left(context);
    if (a === decider) return a;
    const b = right(context);
    if (b === decider) return b;
    return typeof a === "object" ? a : b;
  };

const choose =
  (test: Evaluate, yes: Evaluate, no: Evaluate): Evaluate =>
  (context) => {
    const chosen = test(context);
    if (typeof chosen === "object") return chosen;
    return chosen === true ? yes(context) : no(context);
  };

const membership =
  (left: Evaluate, list: readonly Evaluate[]): Evaluate =>
  (context) => {
    const wanted = left(context);
    if (typeof wanted === "object") return wanted;
    let found = false;
    for (const entry of list) {
      const value = entry(context);
      if (typeof value === "object") return value;
      if (value === wanted) found = true;
    }
    return found;
  };

const call = (name: FunctionName, args: readonly Evaluate[]): Evaluate => {
  const apply = CALLS[name];
  return (context) => {
    const given: number[] = [];
    for (const arg of args) {
      const value = arg(context);
      if (typeof value !== "number") return value;
      given.push(value);
    }
    return finite(apply(given), name);
  };
};
