import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";
import { pointsBehind } from "./dependencies.ts";

/** A calculation without an answer behind it says nothing of what was found. */
export const lintCalculations = (doc: Checklist): readonly Problem[] => {
  const behind = pointsBehind(doc);
  return Object.entries(doc.properties).flatMap(([name, { calculate }]) =>
    calculate !== undefined && behind(calculate).size === 0
      ? [problem(at("/properties", name, "calculate"), "calculation-without-answer")]
      : [],
  );
};
