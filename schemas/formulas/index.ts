/** The door to formulas: the only way to the CEL library, so that apps load it when needed. */

import { atWholePlaces } from "./brackets.ts";
import { compileTree } from "./compile-tree.ts";
import type { FormulaEngine } from "./engine-type.ts";
import { parseFormula } from "./parse.ts";

export const createFormulaEngine = (): FormulaEngine => ({
  compile: (source, names, expected) => {
    const tree = parseFormula(source);
    if (!tree.ok) return tree;
    const result = compileTree(source, tree.value, names, expected);
    return result.ok ? result : { ok: false, problems: atWholePlaces(result.problems, source) };
  },
});
