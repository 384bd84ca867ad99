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

  /** By the decision rule: inside the limit, outside it, and by how much the guard band moves it. */
  "within-guarded": ["value", "comparator", "bound", "guard", "acceptance", "unit", "rule"],
  "outside-guarded": ["value", "comparator", "bound", "guard", "acceptance", "unit", "rule"],
  "astride-guarded": ["value", "comparator", "bound", "guard", "acceptance", "unit", "rule"],
  "conditional-pass": ["value", "comparator", "bound", "guard", "acceptance", "unit", "rule"],
  "conditional-fail": ["value", "comparator", "bound", "guard", "acceptance", "unit", "rule"],
  "uncertainty-missing": [],
  "uncertainty-negative": ["uncertainty"],
  "same-as-last": ["value", "comparator", "last", "within", "by", "unit"],
  "not-same-as-last": ["value", "comparator", "last", "within", "by", "unit"],
  "astride-last": ["value", "comparator", "last", "within", "by", "unit"],
  "no-last": [],
  "not-before": ["value", "bound"],
  "before-earliest": ["value", "bound"],
  "not-after": ["value", "bound"],
  "after-latest": ["value", "bound"],
  stopped: ["by", "say"],
  "stop-undecided": ["by"],
  "result-awaited": ["sample"],
  "too-few-readings": ["count", "given"],
  "too-many-readings": ["count", "given"],
  "censored-mean": [],
  "elapsed-missing": ["atLeast", "atMost"],
  "read-too-early": ["elapsed", "atLeast"],
  "read-too-late": ["elapsed", "atMost"],
  "count-not-right": ["count", "atMost"],
  "no-such-day": ["answer"],
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
  "stop-undecided": ["by"],
  "result-awaited": ["sample"],
  "never-answered": ["kind"],
  "too-few-readings": ["count", "given"],
  "too-many-readings": ["count", "given"],
  "elapsed-missing": ["atLeast", "atMost"],
  "read-too-early": ["elapsed", "atLeast"],
  "read-too-late": ["elapsed", "atMost"],
  "no-such-day": ["answer"],
  "repeat-undecided": ["repeat", "cause"],
  "count-not-right": ["count", "atMost"],
  /** An answer for a member that the repeat does not have. */
  "unknown-member": ["point", "member", "members"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type JudgeCode = keyof typeof JUDGE_CODES;
