import { pointKind } from "../checklist/guards.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { repeatsByPoint } from "../checklist/repeats.ts";
import { nearest, wordBudget } from "../shared/nearest.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { sameDimension } from "../units/unit.ts";
import { UNIT_CODES, unitOf } from "../units/units.ts";
import type { RuleContext } from "./rule-context.ts";
import type { RuleOf } from "./rule-schema.ts";

type Rule = RuleOf<"on-usage">;

/** Points that a meter can be read from: one reading each time, of no repeat. */
const readingsOf = (document: Checklist): readonly string[] => {
  const repeated = repeatsByPoint(document);
  return Object.entries(document.properties)
    .filter(([name, point]) => pointKind(point) === "reading" && !repeated.has(name))
    .map(([name]) => name);
};

function pointProblems({ point, unit }: Rule, document: Checklist): readonly Problem[] {
  const { properties } = document;
  const known = readingsOf(document);
  const definition = Object.hasOwn(properties, point) ? properties[point] : undefined;
  if (definition === undefined) return [problem("/point", "usage-unknown-point", { point, known })];
  if (!known.includes(point)) return [problem("/point", "usage-not-a-reading", { point })];
  const pointUnit = definition.quantity?.unit ?? "1";
  const [mine, its] = [unitOf(unit), unitOf(pointUnit)];
  return mine === undefined || its === undefined || sameDimension(mine, its)
    ? []
    : [problem("/unit", "usage-other-unit", { unit, pointUnit })];
}

/** What an interval by use asks that cannot be; pointers are into the rule. */
export function usageProblems(rule: Rule, context: RuleContext = {}): readonly Problem[] {
  const { unit, every, checklist } = rule;
  const problems: Problem[] = [];
  if (unitOf(unit) === undefined) {
    const near = nearest(unit, UNIT_CODES, wordBudget());
    problems.push(problem("/unit", "unit-unknown", { unit, nearest: near }));
  }
  for (const name of ["early", "late"] as const) {
    const margin = rule[name];
    if (margin !== undefined && margin > every)
      problems.push(problem(at("", name), "margin-longer-than-usage", { margin, every }));
  }
  const reads =
    checklist === undefined || checklist === context.checklist?.id
      ? context.checklist
      : context.metered;
  return reads === undefined ? problems : [...problems, ...pointProblems(rule, reads.document)];
}
