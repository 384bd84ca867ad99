import { roundSignificant } from "../shared/significant.ts";
import { type FormulaContext, isFailure, type NameTypes, type Scalar } from "./engine-type.ts";
import { evaluator } from "./evaluate.ts";
import { readName } from "./read-name.ts";
import type { Node } from "./tree.ts";

const SIGNS = { "+": "+", "-": "-", "*": "×", "/": "÷" } as const;

/** How tightly an operator binds, loosest first. */
const STRENGTH = { "?:": 0, "||": 1, "&&": 2, "=": 3, "<": 4, "+": 5, "*": 6, unary: 7 } as const;

const show = (value: Scalar): string =>
  typeof value === "number" ? String(roundSignificant(value)) : String(value);

/**
 * The arithmetic of a formula with numbers in place of names: "0.1 + 10 × 0.0133". Of a choice,
 * only the branch taken; a name without a value keeps its name.
 */
export const workingOf = (tree: Node, names: NameTypes, context: FormulaContext): string => {
  const wrap = (text: string, own: number, outer: number) => (own < outer ? `(${text})` : text);
  const pair = (left: Node, sign: string, right: Node, own: number, outer: number) =>
    wrap(`${render(left, own)} ${sign} ${render(right, own + 1)}`, own, outer);

  const render = (node: Node, outer: number): string => {
    switch (node.kind) {
      case "literal":
        return show(node.value);
      case "name": {
        const value = readName(node.name, names)(context);
        return isFailure(value) ? node.name : wrap(show(value), isNegative(value) ? 5 : 8, outer);
      }
      case "negate":
        return wrap(`-${render(node.operand, STRENGTH.unary)}`, STRENGTH.unary, outer);
      case "not":
        return `!${render(node.operand, STRENGTH.unary)}`;
      case "and":
        return pair(node.left, "&&", node.right, STRENGTH["&&"], outer);
      case "or":
        return pair(node.left, "||", node.right, STRENGTH["||"], outer);
      case "arithmetic": {
        const own = node.op === "+" || node.op === "-" ? STRENGTH["+"] : STRENGTH["*"];
        return pair(node.left, SIGNS[node.op], node.right, own, outer);
      }
      case "ordering":
        return pair(node.left, node.op, node.right, STRENGTH["<"], outer);
      case "equality":
        return pair(node.left, node.op, node.right, STRENGTH["="], outer);
      case "in": {
        const list = node.list.map((entry) => render(entry, 0)).join(", ");
        return wrap(`${render(node.left, STRENGTH["<"])} in [${list}]`, STRENGTH["<"], outer);
      }
      case "choose": {
        const chosen = evaluator(node.test, names)(context);
        if (typeof chosen === "boolean") return render(chosen ? node.yes : node.no, outer);
        const parts = [node.test, node.yes, node.no].map((part) => render(part, 1));
        return wrap(`${parts[0]} ? ${parts[1]} : ${parts[2]}`, STRENGTH["?:"], outer);
      }
      case "call":
        return `${node.name}(${node.args.map((arg) => render(arg, 0)).join(", ")})`;
    }
  };
  return render(tree, 0);
};

const isNegative = (value: Scalar): boolean => typeof value === "number" && value < 0;
