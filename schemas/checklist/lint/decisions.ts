import { at, type Problem, problem } from "../../shared/problem.ts";
import type { LimitDefinition } from "../meta-schema.ts";
import { type Constant, NUMBER_BOUNDS } from "./contradictions.ts";

/** Decision rules have what they reckon with; uncertainties and differences are never negative. */
export const lintDecision = (
  pointer: string,
  { decision, sameAsLast, ...limit }: LimitDefinition,
  constant: Constant,
): readonly Problem[] => {
  const problems: Problem[] = [];
  if (decision && decision.rule !== "simple") {
    const place = at(pointer, "decision");
    if (decision.uncertainty === undefined) {
      problems.push(problem(place, "decision-without-uncertainty", { rule: decision.rule }));
    }
    if (NUMBER_BOUNDS.every((keyword) => limit[keyword] === undefined)) {
      problems.push(problem(place, "decision-without-bound"));
    }
  }
  const uncertainty = constant(decision?.uncertainty);
  if (uncertainty !== undefined && uncertainty < 0) {
    const place = at(pointer, "decision", "uncertainty");
    problems.push(problem(place, "uncertainty-negative", { uncertainty }));
  }
  const within = constant(sameAsLast?.within);
  if (within !== undefined && within < 0) {
    problems.push(problem(at(pointer, "sameAsLast", "within"), "within-negative", { within }));
  }
  return problems;
};
