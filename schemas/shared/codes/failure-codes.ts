/** Why a formula or a table gave no value, with the names of the parameters of each. */
export const FAILURE_CODES = {
  /** A particular, answer or named value that is not there. */
  missing: ["name"],
  /** The value given for a name is not of the type its definition says. */
  "wrong-type": ["name", "expected"],
  /** Division by zero, overflow. */
  "not-finite": ["operation"],
  "no-rule": ["inputs"],
  "rules-conflict": ["rules"],
  "hits-not-as-declared": ["expected", "found"],
} as const;
