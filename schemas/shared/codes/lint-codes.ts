import { FORMULA_CODES } from "./checklist-codes.ts";

/** What a schema cannot say about a checklist, with the names of the parameters of each. */
export const LINT_ERRORS = {
  ...FORMULA_CODES,
  "nothing-to-ask": [],
  "reserved-name": ["name"],
  "value-cycle": ["names"],
  "unit-unknown": ["unit", "nearest"],
  "unit-other-dimension": ["unit", "expected"],
  "enum-type-mismatch": ["expected", "value"],
  "range-empty": ["minimum", "maximum"],
  "quantity-missing": [],
  "keyword-wrong-kind": ["keyword", "kind"],
  "choice-without-options": [],
  "duplicate-option": ["option"],
  "graded-without-range": [],
  "asks-itself": ["point"],
  "bound-of-itself": ["point"],
  "point-reused": ["point", "issue", "was", "is"],
  "limit-empty": [],
  "limit-kind": ["keyword", "kind"],
  "limit-contradictory": ["minimum", "maximum"],
  "limit-accepts-unknown": ["value", "allowed"],
  "group-unknown-point": ["point", "nearest"],
  "point-in-two-groups": ["point", "group"],
  "duplicate-group": ["id"],
  "score-unknown-point": ["point", "nearest"],
  "score-point-not-graded": ["point"],
  "bands-not-descending": ["from", "above"],
  "bands-gap": ["lowest", "from"],
  "table-columns": ["expected", "found"],
  "table-cell-type": ["expected"],
  "table-mixed-outcomes": [],
  "table-overlap": ["rules", "inputs"],
  "table-without-final-rule": [],
} as const;

export const LINT_WARNINGS = {
  "limit-without-basis": [],
  "reading-without-limit": [],
  "reading-open-below": [],
  "table-hole": ["inputs"],
} as const;

export type LintLevel = "error" | "warning";

/** Errors stand in the way of issuing; warnings ask the designer to look. */
export const LINT_CODES: Readonly<Record<string, { level: LintLevel; params: readonly string[] }>> =
  Object.fromEntries([
    ...Object.entries(LINT_ERRORS).map(([code, params]) => [code, { level: "error", params }]),
    ...Object.entries(LINT_WARNINGS).map(([code, params]) => [code, { level: "warning", params }]),
  ]);
