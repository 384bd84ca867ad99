import { type CelInput, CelScalar, celEnv, celFunc, isCelError, parse, plan } from "@bufbuild/cel";
import type { Expr } from "@bufbuild/cel-spec/cel/expr/syntax_pb.js";
import { isFailure } from "../engine-type.ts";
import type { Given } from "./random-formulas.ts";

const { DOUBLE } = CelScalar;

/** Half away from zero on the twelve digits that count, by way of the decimal expansion. */
const roundByDigits = (value: number): number => {
  const size = Number(Math.abs(value).toPrecision(12));
  const whole = Math.trunc(size);
  const rounded = size - whole >= 0.5 ? whole + 1 : whole;
  return value < 0 || Object.is(value, -0) ? -rounded : rounded;
};

/** How many steps have come out infinite or not a number, ever. */
export const steps = { notFinite: 0 };

const env = celEnv({
  funcs: [
    ...[2, 3, 4].flatMap((count) => {
      const args = Array.from({ length: count }, () => DOUBLE);
      return [
        celFunc("min", args, DOUBLE, (...given: number[]) => Math.min(...given)),
        celFunc("max", args, DOUBLE, (...given: number[]) => Math.max(...given)),
      ];
    }),
    celFunc("abs", [DOUBLE], DOUBLE, (value) => Math.abs(value)),
    celFunc("round", [DOUBLE], DOUBLE, roundByDigits),
    celFunc("finite", [DOUBLE], DOUBLE, (value) => {
      if (Number.isFinite(value)) return value;
      steps.notFinite += 1;
      throw new Error("not finite");
    }),
  ],
});

const ARITHMETIC = ["_+_", "_-_", "_*_", "_/_"];

/**
 * The second engine's own tree with our two rules laid over it: every literal is a double, and
 * the result of every arithmetic operator has to be `finite`. It still does the arithmetic.
 */
const ruled = (expr: Expr, source: string, places: Record<string, number>): Expr => {
  const inner = (child: Expr) => ruled(child, source, places);
  const kind = expr.exprKind;
  if (kind.case === "constExpr" && kind.value.constantKind.case === "int64Value") {
    // Its literals carry their minus sign, which a whole zero cannot keep.
    const minus = source[places[expr.id.toString()] ?? 0] === "-";
    const size = Math.abs(Number(kind.value.constantKind.value));
    const constantKind = { case: "doubleValue" as const, value: minus ? -size : size };
    return { ...expr, exprKind: { case: "constExpr", value: { ...kind.value, constantKind } } };
  }
  if (kind.case === "listExpr") {
    const elements = kind.value.elements.map(inner);
    return { ...expr, exprKind: { case: "listExpr", value: { ...kind.value, elements } } };
  }
  if (kind.case !== "callExpr") return expr;
  const args = kind.value.args.map(inner);
  const call: Expr = { ...expr, exprKind: { case: "callExpr", value: { ...kind.value, args } } };
  if (!ARITHMETIC.includes(kind.value.function)) return call;
  const value = { ...kind.value, function: "finite", args: [call] };
  return { ...expr, exprKind: { case: "callExpr", value } };
};

/** What the second engine makes of a formula: a value, or undefined when it fails. */
export const secondEngine = (source: string): ((given: Given) => unknown) => {
  const parsed = parse(source);
  const evaluate = plan(env, ruled(parsed.expr, source, parsed.sourceInfo?.positions ?? {}));
  return (given) => {
    const bindings: Record<string, CelInput> = {};
    const parts = { asset: new Map<string, CelInput>(), answers: new Map<string, CelInput>() };
    for (const [name, value] of given) {
      if (value === undefined || isFailure(value)) continue;
      if (name.startsWith("asset.")) parts.asset.set(name.slice(6), value);
      else if (name.startsWith("answers.")) parts.answers.set(name.slice(8), value);
      else bindings[name] = value;
    }
    const outcome = evaluate({ ...bindings, ...parts });
    return isCelError(outcome) ? undefined : outcome;
  };
};
