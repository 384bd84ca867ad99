import { compileFormula, plainName } from "../../formulas/compile.ts";
import type { Expected, FormulaEngine } from "../../formulas/engine-type.ts";
import { type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";
import { pointsBehind } from "../points-behind.ts";
import { comesFrom } from "./dependencies.ts";

/** The point a formula belongs to, and what it is called when the formula names it. */
export interface Itself {
  readonly point: string;
  readonly code: "asks-itself" | "bound-of-itself";
}

export type FormulaCheck = (
  pointer: string,
  text: unknown,
  expected: Expected,
  self?: Itself,
) => readonly Problem[];

/** Checks single formulas of a checklist; what is no text, such as a constant, has no problem. */
export const formulaCheck = (
  doc: Checklist,
  names: ChecklistNames,
  engine: FormulaEngine | undefined,
): FormulaCheck => {
  const behind = pointsBehind(doc);
  const comes = comesFrom(doc);
  // Asked by what is calculated from its answer, it is a circle of two, and told as such.
  const isOfItself = (text: string, { code, point }: Itself): boolean =>
    code === "asks-itself" ? behind(text).has(point) : comes(text, point);
  return (pointer, text, expected, self) => {
    if (typeof text !== "string" || (!engine && plainName(text) === null)) return [];
    const result = compileFormula(text, names.types, expected, engine);
    if (!result.ok) return result.problems.map((found) => ({ ...found, pointer }));
    return self !== undefined && isOfItself(text, self)
      ? [problem(pointer, self.code, { point: self.point })]
      : [];
  };
};
