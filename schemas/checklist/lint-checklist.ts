import type { FormulaEngine } from "../formulas/engine-type.ts";
import type { PatternEngine } from "../patterns/engine-type.ts";
import { LINT_CODES } from "../shared/codes/lint-codes.ts";
import type { Problem } from "../shared/problem.ts";
import { lintCalculations } from "./lint/calculations.ts";
import { lintCircles } from "./lint/circles.ts";
import { lintGroups } from "./lint/groups.ts";
import { lintIncludes } from "./lint/includes.ts";
import { lintLimits } from "./lint/limits.ts";
import { lintNames } from "./lint/names.ts";
import { lintPatterns } from "./lint/patterns.ts";
import { lintPoints } from "./lint/points.ts";
import { lintReach } from "./lint/reach.ts";
import { lintRepeats } from "./lint/repeats.ts";
import { lintScores } from "./lint/scores.ts";
import { lintStops } from "./lint/stops.ts";
import { lintTables } from "./lint/tables.ts";
import { lintUnits } from "./lint/units.ts";
import { lintWording } from "./lint/wording.ts";
import type { Checklist } from "./meta-schema.ts";
import { checklistNames } from "./names.ts";

/** More than anybody reads; each problem is an answer to send and a line to show. */
const MOST_TOLD = 500;

/** However many warnings there are, the first errors are told: they stand in the way of issuing. */
const told = (problems: readonly Problem[]): readonly Problem[] => {
  if (problems.length <= MOST_TOLD) return problems;
  const isWarning = ({ code }: Problem) => LINT_CODES[code]?.level === "warning";
  const errors = problems.filter((found) => !isWarning(found));
  return [...errors, ...problems.filter(isWarning)].slice(0, MOST_TOLD);
};

/**
 * Finds what the meta-schema cannot say, in a document that passed it. Pointers lead into the
 * document; `LINT_CODES` tells errors from warnings. Without an engine, formulas other than plain
 * names go unchecked, and without one of patterns all of those, so a checklist is issued only after
 * a run with both. At most 500 are told, errors first where there are more.
 */
export const lintChecklist = (
  doc: Checklist,
  formulas?: FormulaEngine,
  patterns?: PatternEngine,
): readonly Problem[] => {
  const names = checklistNames(doc, formulas);
  return told([
    ...lintNames(doc),
    ...lintIncludes(doc),
    ...names.problems,
    ...lintUnits(doc),
    ...lintPoints(doc),
    ...lintLimits(doc, names, formulas),
    ...lintPatterns(doc, patterns),
    ...lintCircles(doc),
    ...lintReach(doc, names, formulas),
    ...lintCalculations(doc),
    ...lintGroups(doc),
    ...lintRepeats(doc, names, formulas),
    ...lintStops(doc),
    ...lintScores(doc),
    ...lintTables(doc, names),
    ...lintWording(doc),
  ]);
};
