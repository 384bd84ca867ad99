import type { FormulaEngine } from "../formulas/engine-type.ts";
import type { Problem } from "../shared/problem.ts";
import { lintGroups } from "./lint/groups.ts";
import { lintLimits } from "./lint/limits.ts";
import { lintNames } from "./lint/names.ts";
import { lintPoints } from "./lint/points.ts";
import { lintScores } from "./lint/scores.ts";
import { lintTables } from "./lint/tables.ts";
import { lintUnits } from "./lint/units.ts";
import { lintWording } from "./lint/wording.ts";
import type { Checklist } from "./meta-schema.ts";
import { checklistNames } from "./names.ts";

/**
 * Finds what the meta-schema cannot say, in a document that passed it. Pointers lead into the
 * document; `LINT_CODES` tells errors from warnings. Without an engine, formulas other than plain
 * names go unchecked, so a checklist is issued only after a run with one.
 */
export const lintChecklist = (doc: Checklist, formulas?: FormulaEngine): readonly Problem[] => {
  const names = checklistNames(doc, formulas);
  return [
    ...lintNames(doc),
    ...names.problems,
    ...lintUnits(doc),
    ...lintPoints(doc),
    ...lintLimits(doc, names, formulas),
    ...lintGroups(doc),
    ...lintScores(doc),
    ...lintTables(doc, names),
    ...lintWording(doc),
  ];
};
