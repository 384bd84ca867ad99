import { at, type Problem, problem } from "../../shared/problem.ts";
import { answeredBehind } from "../answered-behind.ts";
import type { Checklist } from "../meta-schema.ts";

/** A calculation without an answer behind it says nothing of what was found. */
export const lintCalculations = (doc: Checklist): readonly Problem[] => {
  const answered = answeredBehind(doc);
  return Object.entries(doc.properties).flatMap(([name, { calculate }]) =>
    calculate === undefined || answered.has(name)
      ? []
      : [problem(at("/properties", name, "calculate"), "calculation-without-answer")],
  );
};
