import {
  type Answers,
  type Checklist,
  type Judgement,
  type PatternEngine,
  type Problem,
  splitAnswerName,
  validateAnswers,
} from "@roundbook/schemas";
import { pointOf } from "./lacking.ts";

/** Where the point says in words how it is written, its pattern says nothing more. */
const inWords = ({ params: { pattern: _, ...params }, ...problem }: Problem): Problem => ({
  ...problem,
  params,
});

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
      if (point === undefined || told.has(point)) return [];
      const { description } = document.properties[splitAnswerName(point).point] ?? {};
      return [[point, description === undefined ? problem : inWords(problem)] as const];
    }),
  );
}
