import { tests } from "@bufbuild/cel-spec/testdata/conformance.js";
import type { Problem } from "../../shared/problem.ts";
import { isFailure, type NameType, type Scalar } from "../engine-type.ts";
import { createFormulaEngine } from "../index.ts";
import { contextOf } from "./context-of.ts";

const engine = createFormulaEngine();

/** What the data says of a case beside its text, in the JSON form of its protocol buffers. */
interface Original {
  readonly value?: unknown;
  readonly typedResult?: { readonly result?: unknown };
  readonly evalError?: unknown;
  readonly bindings?: Readonly<Record<string, { readonly value?: unknown }>>;
}

/** One case of the standard's conformance data, with its place there as its name. */
export interface ConformanceCase {
  readonly name: string;
  readonly expr: string;
  readonly original: Original;
}

/** What became of a case: it passes, is refused with a problem, or comes out otherwise. */
export type Outcome =
  | { readonly kind: "passes" }
  | { readonly kind: "refused"; readonly why: string }
  | { readonly kind: "differs"; readonly found: string };

type Suite = typeof tests;
const casesOf = (suite: Suite, trail: readonly string[]): readonly ConformanceCase[] => [
  ...(suite.tests ?? []).map(({ original }) => ({
    name: [...trail, original.name ?? ""].join("/"),
    expr: original.expr,
    original: original as Original,
  })),
  ...(suite.suites ?? []).flatMap((inner) => casesOf(inner, [...trail, inner.name])),
];

/** Every case of the conformance data, whatever it is about. */
export const CASES: readonly ConformanceCase[] = casesOf(tests, []);

/** A value of the data as a formula has it; undefined for what no formula can come to. */
const scalar = (value: unknown): Scalar | undefined => {
  const [kind, plain] = Object.entries(value ?? {})[0] ?? [];
  if (kind === "int64Value" || kind === "uint64Value" || kind === "doubleValue") {
    return Number(plain);
  }
  const known = kind === "boolValue" || kind === "stringValue";
  return known && typeof plain !== "object" ? plain : undefined;
};

const bound = (original: Original): ReadonlyMap<string, Scalar> =>
  new Map(
    Object.entries(original.bindings ?? {}).flatMap(([name, { value }]) => {
      const given = name.includes(".") ? undefined : scalar(value);
      return given === undefined ? [] : [[name, given] as const];
    }),
  );

/** What the parser cannot read at all, told by the text. */
const SYNTAX: readonly (readonly [string, RegExp])[] = [
  ["bytes", /^[bB][rR]['"]/],
  ["optional entry or choice", /[.[{,(]\s*\?/],
  ["name in back quotes", /`/],
  ["message", /[A-Za-z](\s|\/\/ @\n)*\{/],
  ["number that begins with its point", /(^|\s)\.\d/],
];

const reasonOf = (expr: string, found: Problem | undefined): string => {
  if (found?.code === "formula-syntax") {
    return SYNTAX.find(([, pattern]) => pattern.test(expr))?.[0] ?? "unread";
  }
  const construct = found?.params.construct;
  if (typeof construct !== "string") return found?.code ?? "no problem";
  return construct === "macro" || construct.endsWith("()")
    ? "function, method or macro"
    : construct;
};

/** Puts a case to the formula engine. */
export const outcomeOf = ({ expr, original }: ConformanceCase): Outcome => {
  const given = bound(original);
  const names = new Map<string, NameType>(
    [...given].map(([name, value]) => [name, { type: typeof value as NameType["type"] }]),
  );
  const compiled = engine.compile(expr, names);
  if (!compiled.ok) return { kind: "refused", why: reasonOf(expr, compiled.problems[0]) };
  const found = compiled.value.evaluate(contextOf(given));
  const expected = scalar(original.value ?? original.typedResult?.result);
  const agrees = isFailure(found) ? original.evalError !== undefined : found === expected;
  const shown = isFailure(found) ? found.code : String(found);
  return agrees ? { kind: "passes" } : { kind: "differs", found: shown };
};
