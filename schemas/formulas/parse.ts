import { type ASTNode, Environment, ParseError } from "@marcbachmann/cel-js";
import { nearest } from "../shared/nearest.ts";
import { type Problem, problem, type Result } from "../shared/problem.ts";
import { atWholePlaces, pairsOf } from "./brackets.ts";
import { RESERVED_NAMES } from "./reserved.ts";
import {
  ARITHMETIC,
  type Equality,
  FUNCTIONS,
  type FunctionName,
  MAX_FORMULA_DEPTH,
  MAX_FORMULA_LENGTH,
  MAX_FORMULA_NODES,
  type Node,
  ORDERINGS,
  type Place,
} from "./tree.ts";

const cel = new Environment({
  unlistedVariablesAreDyn: true,
  // Lists and arguments are nodes: no limit but the one on nodes is ever met, nor has to be told.
  limits: {
    maxAstNodes: MAX_FORMULA_NODES,
    maxDepth: MAX_FORMULA_DEPTH,
    maxListElements: MAX_FORMULA_NODES,
    maxCallArguments: MAX_FORMULA_NODES,
  },
});

const notAllowed = (construct: string, { start, end }: Place): Problem =>
  problem("", "formula-not-allowed", { construct, start, end });

/** Leaves the conversion with the one problem found; never escapes this file. */
class Refused extends Error {
  readonly problem: Problem;
  constructor(found: Problem) {
    super(found.code);
    this.problem = found;
  }
}

const refuse = (place: Place, construct: string): never => {
  throw new Refused(notAllowed(construct, place));
};

const member = <T extends string>(list: readonly T[], word: string): T | undefined =>
  list.find((candidate) => candidate === word);

const literal = (ast: ASTNode, place: Place): Node => {
  const value: unknown = ast.args;
  // Every number is a double: 7 / 2 is 3.5, where CEL's whole numbers would give 3.
  if (typeof value === "number" || typeof value === "bigint") {
    const number = Number(value);
    if (!Number.isFinite(number)) return refuse(place, "number-too-large");
    return { kind: "literal", value: number, ...place };
  }
  if (typeof value === "boolean") return { kind: "literal", value, ...place };
  if (typeof value === "string") {
    // Raw and triple-quoted strings read alike to nobody but a programmer.
    if (!/^(?!'''|""")['"]/.test(ast.input.slice(place.start, place.end))) {
      return refuse(place, "string-prefix");
    }
    return { kind: "literal", value, ...place };
  }
  if (value === null) return refuse(place, "null");
  return refuse(place, value instanceof Uint8Array ? "bytes" : "unsigned-number");
};

/** The function a call names; one that is no function here, but nearly, is a slip of the pen. */
const functionOf = (called: string, place: Place): FunctionName => {
  const name = member(FUNCTIONS, called);
  if (name) return name;
  const near = nearest(called, FUNCTIONS);
  if (near === null) return refuse(place, `${called}()`);
  const end = place.start + called.length;
  const params = { name: called, nearest: near, start: place.start, end };
  throw new Refused(problem("", "unknown-name", params));
};

const toNode = (ast: ASTNode): Node => {
  const place: Place = { start: ast.start, end: ast.end };
  switch (ast.op) {
    case "value":
      return literal(ast, place);
    case "id":
      return { kind: "name", name: ast.args, ...place };
    case ".": {
      // Of any other owner no name is known, so that a slip in "asset" is told like any other.
      const [owner, field] = ast.args;
      if (owner.op !== "id") return refuse(place, "member");
      return { kind: "name", name: `${owner.args}.${field}`, ...place };
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
      if (list.op !== "list") return refuse(place, "in-without-list");
      return { kind: "in", left: toNode(left), list: list.args.map(toNode), ...place };
    }
    case "call": {
      const [called, args] = ast.args;
      const name = functionOf(called, place);
      const count = name === "abs" || name === "round" ? args.length === 1 : args.length >= 2;
      if (!count) return refuse(place, `${called}() with ${args.length}`);
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
      return binary(ast.op, toNode(ast.args[0]), toNode(ast.args[1]), place);
    case "==":
    case "!=": {
      const [left, right] = ast.args;
      const bracketed = bracketsFrom(left.end, ast.input);
      return compareInTurn(ast.op, toNode(left), toNode(right), bracketed);
    }
    case "rcall":
      return refuse(place, `.${ast.args[0]}()`);
    default:
      return refuse(place, ast.op);
  }
};

type Bracketed = (node: Place) => boolean;

/** Whether a node on the right of `from` stands in brackets of its own. */
const bracketsFrom = (from: number, source: string): Bracketed => {
  const pairs = pairsOf(source).filter(([opens]) => opens >= from);
  return ({ start, end }) => pairs.some(([opens, closes]) => opens < start && closes >= end);
};

/**
 * The standard has all comparisons bind alike, from the left (cel-spec, "Syntax": Relation), but
 * the parser takes `a == b in c` for `a == (b in c)`.
 */
const compareInTurn = (op: Equality, left: Node, right: Node, bracketed: Bracketed): Node => {
  const place = { start: left.start, end: right.end };
  if ((right.kind !== "ordering" && right.kind !== "in") || bracketed(right)) {
    return { kind: "equality", op, left, right, ...place };
  }
  return { ...right, left: compareInTurn(op, left, right.left, bracketed), ...place };
};

const binary = (word: string, left: Node, right: Node, place: Place): Node => {
  const arithmetic = member(ARITHMETIC, word);
  if (arithmetic) return { kind: "arithmetic", op: arithmetic, left, right, ...place };
  const ordering = member(ORDERINGS, word);
  if (ordering) return { kind: "ordering", op: ordering, left, right, ...place };
  return refuse(place, word);
};

const syntaxProblem = (error: ParseError, source: string): Problem => {
  const start = Math.min(error.range?.start ?? 0, source.length);
  const last = Math.min(error.range?.end ?? start, source.length);
  // One character of the reader's may be two of UTF-16, and the lexer looks at one.
  const end = last > start && (source.codePointAt(last - 1) ?? 0) > 0xffff ? last + 1 : last;
  const word = source.slice(start, end);
  if (error.code === "limit_exceeded") {
    return problem("", "formula-too-complex", {
      nodes: MAX_FORMULA_NODES,
      depth: MAX_FORMULA_DEPTH,
    });
  }
  if (error.code === "reserved_identifier" || RESERVED_NAMES.has(word))
    return problem("", "reserved-word", { word, start, end });
  if (error.code === "invalid_number") return notAllowed("number-too-large", { start, end });
  // Macros are read by the library itself, which finds their variable missing before we see them.
  if (error.code === "invalid_macro_argument") return notAllowed("macro", { start, end });
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
    if (error instanceof Refused) {
      return { ok: false, problems: atWholePlaces([error.problem], source) };
    }
    if (error instanceof ParseError) return { ok: false, problems: [syntaxProblem(error, source)] };
    throw error;
  }
};
