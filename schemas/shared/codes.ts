import { DUE_CODES, DUE_PROBLEM_CODES } from "../due/codes.ts";
import { RRULE_CODES } from "../due/rrule/codes.ts";
import { JUDGE_CODES, JUDGE_PROBLEM_CODES } from "../judge/codes.ts";
import { ANSWER_CODES, PARTICULAR_CODES, SHAPE_CODES } from "./codes/checklist-codes.ts";
import { DESK_CODES } from "./codes/desk-codes.ts";
import { FAILURE_CODES } from "./codes/failure-codes.ts";
import { IMPORT_CODES } from "./codes/import-codes.ts";
import { LINT_ERRORS, LINT_WARNINGS } from "./codes/lint-codes.ts";

type CodeList = Readonly<Record<string, readonly string[]>>;

/** Joins lists; of a code that two areas use, only the parameters that both give can be counted on. */
const join = (...lists: readonly CodeList[]): CodeList => {
  const joined = new Map<string, readonly string[]>();
  for (const [code, params] of lists.flatMap((list) => Object.entries(list))) {
    const known = joined.get(code);
    joined.set(code, known ? known.filter((param) => params.includes(param)) : params);
  }
  return Object.fromEntries(joined);
};

/** Every code of a `Problem`, with its parameters: a catalogue words each of them. */
export const PROBLEM_CODES: CodeList = join(
  SHAPE_CODES,
  ANSWER_CODES,
  PARTICULAR_CODES,
  LINT_ERRORS,
  LINT_WARNINGS,
  JUDGE_PROBLEM_CODES,
  DUE_PROBLEM_CODES,
  RRULE_CODES,
  IMPORT_CODES,
  DESK_CODES,
);

/** Every code of an `Explanation`, with its parameters: a catalogue words each of them. */
export const EXPLANATION_CODES: CodeList = join(FAILURE_CODES, JUDGE_CODES, DUE_CODES);
