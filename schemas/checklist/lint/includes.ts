import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";

/** What is issued stands alone: `resolveBlocks` takes the blocks in before a document is linted. */
export const lintIncludes = (doc: Checklist): readonly Problem[] =>
  (doc.include ?? []).map(({ block }, index) =>
    problem(at("/include", index), "include-unresolved", { block }),
  );
