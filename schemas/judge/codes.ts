import { PARTICULAR_CODES } from "../shared/codes/checklist-codes.ts";

const { "unknown-particular": _, "particular-wrong-type": __, ...PARTICULARS } = PARTICULAR_CODES;

/**
 * Why a point, limit or score has its verdict, and the parameters each sentence mentions.
 * `value`, `bound` and `by` are in `unit`, the point's own; `comparator` is "" for an exact reading.
 * Where a formula or table gave no value the reason is one of `FAILURE_CODES`.
 */
export const JUDGE_CODES = {
  "within-max": ["value", "comparator", "bound", "by", "unit"],
  "above-max": ["value", "comparator", "bound", "by", "unit"],
  "astride-max": ["value", "comparator", "bound", "by", "unit"],
  "within-min": ["value", "comparator", "bound", "by", "unit"],
  "below-min": ["value", "comparator", "bound", "by", "unit"],
  "astride-min": ["value", "comparator", "bound", "by", "unit"],
  "within-exclusive-max": ["value", "comparator", "bound", "by", "unit"],
  "not-below-exclusive-max": ["value", "comparator", "bound", "by", "unit"],
  "astride-exclusive-max": ["value", "comparator", "bound", "by", "unit"],
  "within-exclusive-min": ["value", "comparator", "bound", "by", "unit"],
  "not-above-exclusive-min": ["value", "comparator", "bound", "by", "unit"],
  "astride-exclusive-min": ["value", "comparator", "bound", "by", "unit"],
  accepted: ["answer", "accept"],
  "not-accepted": ["answer", "accept"],

  "no-limits": [],
  "not-asked": [],
  "not-answered": [],
  absent: ["reason"],
  "absence-not-allowed": ["reason", "allowed"],
  "no-limit-applies": [],
  "limit-not-for-kind": ["kind", "limit"],
  "unit-not-convertible": ["unit", "to"],
  "formula-refused": ["formula", "cause"],
  cycle: ["name"],
  // A particular outside its own definition is not known, whatever stands there.
  ...PARTICULARS,
  "not-explained": [],

  "not-an-answer": ["kind"],
  "not-finite-reading": [],
  "not-among-choices": ["answer", "choices"],
  "grade-out-of-range": ["answer", "minimum", "maximum"],

  "score-band": ["score", "band", "sum", "most", "answered"],
  "score-below-bands": ["score", "sum", "most", "answered"],
  "score-nothing-answered": [],
  "score-point-undecided": ["point"],
  "score-point-ungraded": ["point"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** Problems of a set of answers. The pointer names the answer or its evidence. */
export const JUDGE_PROBLEM_CODES = {
  "mandatory-not-answered": [],
  "nothing-answered": [],
  "ask-undecided": ["cause"],
  "absence-not-allowed": ["reason", "allowed"],
  "unknown-point": ["point", "nearest"],
  "evidence-missing": ["kind", "verdict", "atLeast", "given"],
  "unit-not-convertible": ["unit", "to"],
  "not-an-answer": ["kind"],
  "not-finite-reading": [],
  "not-among-choices": ["answer", "choices"],
  "grade-out-of-range": ["answer", "minimum", "maximum"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type JudgeCode = keyof typeof JUDGE_CODES;
