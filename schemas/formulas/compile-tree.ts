import type { Result } from "../shared/problem.ts";
import { checkTree } from "./check.ts";
import type { CompiledFormula, Expected, NameTypes } from "./engine-type.ts";
import { evaluator } from "./evaluate.ts";
import type { Node } from "./tree.ts";
import { workingOf } from "./working.ts";

/** Checks a tree and makes it ready to evaluate. */
export const compileTree = (
  source: string,
  tree: Node,
  names: NameTypes,
  expected: Expected = {},
): Result<CompiledFormula> => {
  const checked = checkTree(tree, names, expected);
  if (!checked.ok) return checked;
  const { type, unit, used } = checked.value;
  const evaluate = evaluator(tree, names);
  return {
    ok: true,
    value: {
      source,
      type,
      unit,
      names: used,
      evaluate,
      working: (context) => workingOf(tree, names, context),
    },
  };
};
