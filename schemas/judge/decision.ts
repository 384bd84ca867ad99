import { type Failure, failure, isFailure } from "../formulas/engine-type.ts";
import { roundSignificant } from "../shared/significant.ts";
import { compareReading, type Fit, isUpper, type NumberBound } from "./compare.ts";
import { numberOf } from "./expression.ts";
import type { Measured } from "./given.ts";
import type { Conformity } from "./judgement.ts";
import type { Judging } from "./judging.ts";
import type { PreparedDecision } from "./prepared.ts";

/** How one reading lies to one bound by the limit's decision rule. */
export interface Decided {
  readonly fit: Fit;
  /** Only of the non-binary rule, and only where it could be told. */
  readonly conformity?: Conformity;
}

/**
 * The width of the guard band, w = r · U, in the point's unit (ILAC-G8:09/2019, 4.2). A failure
 * when the expanded uncertainty U is not known, is negative or not finite.
 */
export function guardOf({ uncertainty, factor }: PreparedDecision, run: Judging): number | Failure {
  if (uncertainty === undefined) return failure("uncertainty-missing", {});
  const u = numberOf(uncertainty, run);
  if (isFailure(u)) return u;
  if (u < 0) return failure("uncertainty-negative", { uncertainty: u });
  const width = roundSignificant(u * factor);
  return Number.isFinite(width) ? width : failure("not-finite", { operation: uncertainty.source });
}

/** The bound moved inwards by the guard band, or outwards where it is negative. */
export const inwards = (kind: NumberBound, bound: number, guard: number): number =>
  roundSignificant(isUpper(kind) ? bound - guard : bound + guard);

/** Where the rule accepts up to: the bound itself for the non-binary rule, which tells four ways. */
export function acceptanceOf(
  { rule }: PreparedDecision,
  kind: NumberBound,
  bound: number,
  guard: number,
): number {
  switch (rule) {
    case "guarded-acceptance":
    case "non-binary":
      return inwards(kind, bound, guard);
    case "guarded-rejection":
      return inwards(kind, bound, -guard);
  }
}

/** One reading against one bound by a decision rule with the guard band `guard` (≥ 0). */
export function decide(
  decision: PreparedDecision,
  kind: NumberBound,
  { comparator, value }: Measured,
  bound: number,
  guard: number,
): Decided {
  const against = (moved: number): Fit => compareReading(kind, comparator, value, moved);
  if (decision.rule !== "non-binary")
    return { fit: against(acceptanceOf(decision, kind, bound, guard)) };
  const inner = against(inwards(kind, bound, guard));
  if (inner === "pass") return { fit: "pass", conformity: "pass" };
  const outer = against(inwards(kind, bound, -guard));
  if (outer === "fail") return { fit: "fail", conformity: "fail" };
  // What is open on either side of the band is open: nothing is told of a half-line across it.
  if (inner === "undecided" || outer === "undecided") return { fit: "undecided" };
  return against(bound) === "pass"
    ? { fit: "pass", conformity: "conditional-pass" }
    : { fit: "fail", conformity: "conditional-fail" };
}
