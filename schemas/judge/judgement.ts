import type { Explanation, Problem } from "../shared/problem.ts";

/** Computed from checklist, particulars and answers; never typed in. */
export type Verdict = "pass" | "advisory" | "fail" | "undecided";

/**
 * `not-counted`: an allowed absence. `null`: the point has no limits, or was not asked.
 * A point with limits that nobody answered is `undecided`, never `pass`.
 */
export type PointVerdict = Verdict | "not-counted" | null;

/**
 * `not-evaluated`: nothing was counted. `null`: something was answered, and the checklist holds
 * no limit and no banded score, so there is nothing to judge.
 */
export type OverallVerdict = Verdict | "not-evaluated" | null;

export type BoundKind =
  | "min"
  | "max"
  | "exclusiveMin"
  | "exclusiveMax"
  | "accept"
  | "notBefore"
  | "notAfter"
  | "sameAsLast";

/** The four outcomes of the non-binary decision rule (ILAC-G8:09/2019, 4.2.3). */
export type Conformity = "pass" | "conditional-pass" | "conditional-fail" | "fail";

export interface LimitJudgement {
  /** Position in the point's `limits`. */
  readonly index: number;
  readonly severity: "fail" | "advisory";
  readonly kind: BoundKind;
  /** In the point's own unit, rounded to 12 significant digits; null when it could not be had. */
  readonly bound: number | null;
  /** Of a date, YYYY-MM-DD. */
  readonly boundDate?: string;
  /** Where the bound stands once the guard band of the decision rule is taken off or added. */
  readonly acceptance?: number;
  /** By the non-binary decision rule. */
  readonly conformity?: Conformity;
  readonly verdict: Verdict;
  /** The bound worked out with its numbers, such as "0.1 + 10 × 0.0133"; absent for a plain number. */
  readonly working?: string;
  readonly basis?: string;
  readonly why: Explanation;
}

export interface PointJudgement {
  readonly verdict: PointVerdict;
  /** The bound of the limit that decided: for a pass the nearest to the reading. */
  readonly bound: number | null;
  readonly why: Explanation;
  readonly limits: readonly LimitJudgement[];
  readonly asked: boolean;
  /** What was worked out: a calculated point, or what stands for several readings; in its unit. */
  readonly value?: number;
  /** How a calculated point was worked out, with its numbers, such as "62 − 52". */
  readonly working?: string;
}

/** The members of a repeat, as this inspection has them. */
export interface RepeatJudgement {
  /** How many there must be; null when that could not be worked out. */
  readonly expected: number | null;
  readonly members: readonly { readonly id: string; readonly title: string }[];
  /** Why the number could not be worked out. */
  readonly why: Explanation | null;
}

export interface ScoreJudgement {
  /** Rounded as the checklist says; null when undecided or not evaluated. */
  readonly score: number | null;
  readonly verdict: Verdict | "not-evaluated" | null;
  readonly band: string | null;
  /** ISO 8601 duration to the next inspection, "at-once", or null when the band names none. */
  readonly next: string | null;
  readonly answered: number;
  readonly why: Explanation;
}

export interface Judgement {
  readonly overall: OverallVerdict;
  /** By name of the answer: the point, and in a repeat `point@member`. */
  readonly points: Readonly<Record<string, PointJudgement>>;
  /** By id of the group that repeats. */
  readonly repeats: Readonly<Record<string, RepeatJudgement>>;
  /** Answers that wait for the result of a sample: the overall verdict is undecided until then. */
  readonly pending: readonly string[];
  readonly scores: Readonly<Record<string, ScoreJudgement>>;
  /**
   * Something is answered, and everything mandatory is answered or absent for an allowed reason,
   * with its evidence.
   */
  readonly complete: boolean;
  /** What keeps it from being complete, and answers that could not be used. */
  readonly problems: readonly Problem[];
  /** Version of the judging rules: a change of any verdict changes it. */
  readonly engine: string;
}
