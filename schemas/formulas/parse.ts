import { type ASTNode, Environment, ParseError } from "@marcbachmann/cel-js";
import { type Problem, problem, type Result } from "../shared/problem.ts";
import {
  ARITHMETIC,
  EQUALITIES,
  FUNCTIONS,
  MAX_FORMULA_DEPTH,
  MAX_FORMULA_LENGTH,
  MAX_FORMULA_NODES,
  type Node,
  ORDERINGS,
  type Place,
} from "./tree.ts";

const cel = new Environment({
  unlistedVariablesAreDyn: true,
  limits: {
    maxAstNodes: MAX_FORMULA_NODES,
    maxDepth: MAX_FORMULA_DEPTH,
    maxListElements: 100,
    maxCallArguments: 32,
  },
});

/** Leaves the conversion with the one problem found; never escapes this file. */
class Refused extends Error {
  readonly problem: Problem;
  constructor(place: Place, construct: string) {
    super(construct);
    this.problem = problem("", "formula-not-allowed", { construct, ...place });
  }
}

const member = <T extends string>(list: readonly T[], word: string): T | undefined =>
  list.find((candidate) => candidate === word);

const literal = (ast: ASTNode, place: Place): Node => {
  const value: unknown = ast.args;
  // Every number is a double: 7 / 2 is 3.5, where CEL's whole numbers would give 3.
  if (typeof value === "number" || typeof value === "bigint") {
    const number = Number(value);
    if (!Number.isFinite(number)) throw new Refused(place, "number-too-large");
    return { kind: "literal", value: number, ...place };
  }
  if (typeof value === "boolean") return { kind: "literal", value, ...place };
  if (typeof value === "string") {
    // Raw and triple-quoted strings read alike to nobody but a programmer.
    if (!/^(?!'''|""")['"]/.test(ast.input.slice(place.start, place.end))) {
      throw new Refused(place, "string-prefix");
    }
    return { kind: "literal", value, ...place };
  }
  throw new Refused(place, value === null ? "null" : "literal");
};

const toNode = (ast: ASTNode): Node => {
  const place: Place = { start: ast.start, end: ast.end };
  switch (ast.op) {
    case "value":
      return literal(ast, place);
    case "id":
      return { kind: "name", name: ast.args, ...place };
    case ".": {
      const [owner, field] = ast.args;
      if (owner.op !== "id" || (owner.args !== "asset" && owner.args !== "answers")) {
        throw new Refused(place, "member");
      }
      return { kind: "name", name: `${owner.args}.${field}`, start: owner.start, end: ast.end };
    }
    case "-_":
      return { kind: "negate", operand: toNode(ast.args), ...place };
    case "!_":
      return { kind: "not", operand: toNode(ast.args), ...place };
    case "&&":
    case "||": {
      const [left, right] = ast.args;
      const kind = ast.op === "&&" ? "and" : "or";
      return { kind, left: toNode(left), right: toNode(right), ...place };
    }
    case "?:": {
      const [test, yes, no] = ast.args;
      return { kind: "choose", test: toNode(test), yes: toNode(yes), no: toNode(no), ...place };
    }
    case "in": {
      const [left, list] = ast.args;
      if (list.op !== "list") throw new Refused(place, "in-without-list");
      return { kind: "in", left: toNode(left), list: list.args.map(toNode), ...place };
    }
    case "call": {
      const [called, args] = ast.args;
      const name = member(FUNCTIONS, called);
      if (!name) throw new Refused(place, `${called}()`);
      const count = name === "abs" || name === "round" ? args.length === 1 : args.length >= 2;
      if (!count) throw new Refused(place, `${called}() with ${args.length}`);
      return { kind: "call", name, args: args.map(toNode), ...place };
    }
    case "+":
    case "-":
    case "*":
    case "/":
    case "<":
    case "<=":
    case ">":
    case ">=":
    case "==":
    case "!=":
      return binary(ast.op, toNode(ast.args[0]), toNode(ast.args[1]), place);
    default:
      throw new Refused(place, ast.op);
  }
};

const binary = (word: string, left: Node, right: Node, place: Place): Node => {
  const arithmetic = member(ARITHMETIC, word);
  if (arithmetic) return { kind: "arithmetic", op: arithmetic, left, right, ...place };
  const ordering = member(ORDERINGS, word);
  if (ordering) return { kind: "ordering", op: ordering, left, right, ...place };
  const equality = member(EQUALITIES, word);
  if (equality) return { kind: "equality", op: equality, left, right, ...place };
  throw new Refused(place, word);
};

const syntaxProblem = (error: ParseError, source: string): Problem => {
  if (error.code === "limit_exceeded") {
    return problem("", "formula-too-complex", {
      nodes: MAX_FORMULA_NODES,
      depth: MAX_FORMULA_DEPTH,
    });
  }
  const start = Math.min(error.range?.start ?? error.node?.start ?? 0, source.length);
  const end = Math.min(error.range?.end ?? error.node?.end ?? start, source.length);
  return problem("", "formula-syntax", { reason: error.code, start, end });
};

/** Reads a formula of the profile. Only this file knows the CEL library. */
export const parseFormula = (source: string): Result<Node> => {
  if (source.length > MAX_FORMULA_LENGTH) {
    const params = { length: source.length, limit: MAX_FORMULA_LENGTH };
    return { ok: false, problems: [problem("", "formula-too-long", params)] };
  }
  try {
    return { ok: true, value: toNode(cel.parse(source).ast) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problems: [error.problem] };
    if (error instanceof ParseError) return { ok: false, problems: [syntaxProblem(error, source)] };
    throw error;
  }
};
