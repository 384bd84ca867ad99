import {
  type Answers,
  type Checklist,
  type Judgement,
  type PatternEngine,
  type Problem,
  validateAnswers,
} from "@roundbook/schemas";
import { pointOf } from "./lacking.ts";

/** What is wrong with how an answer is written, by its name, where the judge has not said so. */
export function malformedOf(
  document: Checklist,
  answers: Answers,
  judgement: Judgement,
  patterns: PatternEngine | undefined,
): ReadonlyMap<string, Problem> {
  const told = new Set(judgement.problems.map((problem) => pointOf(document, problem)));
  return new Map(
    validateAnswers(document, answers, patterns).flatMap((problem) => {
      const point = pointOf(document, problem);
      return point === undefined || told.has(point) ? [] : [[point, problem] as const];
    }),
  );
}
