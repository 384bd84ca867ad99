import { formatCivilDate } from "../due/civil.ts";
import { type Failure, failure, isFailure } from "../formulas/engine-type.ts";
import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import { compareReading, type Fit, isUpper, type NumberBound } from "./compare.ts";
import { acceptanceOf, type Decided, decide, guardOf } from "./decision.ts";
import { numberOf } from "./expression.ts";
import { explained, type Measured, type Usable } from "./given.ts";
import type { LimitJudgement, Verdict } from "./judgement.ts";
import type { Judging } from "./judging.ts";
import type { PreparedBound, PreparedLimit, PreparedPoint } from "./prepared.ts";
import { whyOfBound, whyOfGuard, whyOfLast } from "./why.ts";

/** What one bound says of an answer. */
export interface Outcome {
  readonly verdict: Verdict;
  readonly bound: number | null;
  /** From the answer to the bound: of passes the nearest decides. */
  readonly distance: number;
  readonly why: Explanation;
  readonly more?: Partial<Pick<LimitJudgement, "acceptance" | "boundDate" | "conformity">>;
}

const unknown = (why: Explanation): Outcome => ({
  verdict: "undecided",
  bound: null,
  distance: Number.POSITIVE_INFINITY,
  why,
});

const GRAVEST = ["pass", "conditional-pass", "undecided", "conditional-fail", "fail"];
/** Beside a conditional pass, what is open may be the pass that decides: it stays open. */
const BEST = ["pass", "undecided", "conditional-pass", "conditional-fail", "fail"];

/** From what is best to what is gravest for one reading. */
const rank = ({ fit, conformity }: Decided, best: boolean): number =>
  (best ? BEST : GRAVEST).indexOf(conformity ?? fit);

/**
 * Whether the best of several readings decides: the highest meets a minimum as soon as one does,
 * and a maximum only when all do.
 */
const bestDecides = (point: PreparedPoint, kind: NumberBound): boolean =>
  point.several?.combine === (isUpper(kind) ? "lowest" : "highest");

/** The reading that decides, with what the rule says of it. */
function deciding(
  readings: readonly Measured[],
  best: boolean,
  bound: number,
  of: (reading: Measured) => Decided,
): { readonly reading: Measured; readonly decided: Decided } | undefined {
  let chosen: { reading: Measured; decided: Decided } | undefined;
  const away = ({ value }: Measured) => Math.abs(value - bound);
  for (const reading of readings) {
    const decided = of(reading);
    if (chosen !== undefined) {
      const more = rank(decided, best) - rank(chosen.decided, best);
      if (best ? more > 0 : more < 0) continue;
      if (more === 0 && away(reading) >= away(chosen.reading)) continue;
    }
    chosen = { reading, decided };
  }
  return chosen;
}

const verdictOf = ({ fit, conformity }: Decided, { severity }: PreparedLimit): Verdict => {
  if (fit === "fail") return severity;
  return conformity === "conditional-pass" ? "advisory" : fit;
};

function numeric(
  run: Judging,
  point: PreparedPoint,
  limit: PreparedLimit,
  kind: NumberBound,
  bound: number,
  readings: readonly Measured[],
): Outcome {
  const { decision } = limit;
  const guard = decision === undefined ? 0 : guardOf(decision, run);
  if (isFailure(guard)) return unknown(guard);
  if (![bound - guard, bound + guard].every(Number.isFinite))
    return unknown(failure("not-finite", { operation: "+" }));
  const of = (reading: Measured): Decided =>
    decision === undefined
      ? { fit: compareReading(kind, reading.comparator, reading.value, bound) }
      : decide(decision, kind, reading, bound, guard);
  const chosen = deciding(readings, bestDecides(point, kind), bound, of);
  if (chosen === undefined) return unknown(explained("not-answered"));
  const { reading, decided } = chosen;
  const acceptance =
    decision === undefined ? undefined : acceptanceOf(decision, kind, bound, guard);
  return {
    verdict: verdictOf(decided, limit),
    bound,
    distance: Math.abs(reading.value - bound),
    why:
      acceptance === undefined || decision === undefined
        ? whyOfBound(kind, decided.fit, reading, bound, point.unit)
        : whyOfGuard(
            decided,
            reading,
            { bound, guard, acceptance, rule: decision.rule },
            point.unit,
          ),
    more: {
      ...(acceptance === undefined ? {} : { acceptance }),
      ...(decided.conformity === undefined ? {} : { conformity: decided.conformity }),
    },
  };
}

function sameAsLast(
  run: Judging,
  point: PreparedPoint,
  limit: PreparedLimit,
  bound: Extract<PreparedBound, { kind: "sameAsLast" }>,
  given: Usable,
): Outcome | undefined {
  const last = run.last(point);
  if (last === undefined)
    return bound.whenNone === "not-applied" ? undefined : unknown(explained("no-last"));
  if (given.is !== "number" || last.is !== "number" || last.comparator !== "")
    return unknown(explained("no-last"));
  const within = numberOf(bound.within, run);
  if (isFailure(within)) return unknown(within);
  if (![last.value - within, last.value + within].every(Number.isFinite))
    return unknown(failure("not-finite", { operation: "+" }));
  const { value, comparator } = given;
  const below = compareReading("max", comparator, value, roundSignificant(last.value + within));
  const above = compareReading("min", comparator, value, roundSignificant(last.value - within));
  const fit: Fit =
    below === "fail" || above === "fail" ? "fail" : below === "pass" ? above : "undecided";
  return {
    verdict: fit === "fail" ? limit.severity : fit,
    bound: last.value,
    distance: Math.abs(roundSignificant(value - last.value)),
    why: whyOfLast(fit, given, last.value, within, point.unit),
  };
}

function dated(
  run: Judging,
  limit: PreparedLimit,
  bound: Extract<PreparedBound, { kind: "notBefore" | "notAfter" }>,
  given: Usable,
): Outcome | Failure {
  if (given.is !== "date") return failure("not-an-answer", { kind: "date" });
  const day = bound.day(run);
  if (isFailure(day)) return day;
  const late = bound.kind === "notAfter";
  const fits = late ? given.day <= day : given.day >= day;
  const boundDate = formatCivilDate(day as CivilDate);
  const code = late
    ? fits
      ? "not-after"
      : "after-latest"
    : fits
      ? "not-before"
      : "before-earliest";
  return {
    verdict: fits ? "pass" : limit.severity,
    bound: null,
    distance: Math.abs(given.day - day),
    why: explained(code, { value: given.value, bound: boundDate }),
    more: { boundDate },
  };
}

/**
 * What a bound says of an answer where more than one comparison of one reading is asked for:
 * several readings, a decision rule, a date, the reading before. Undefined where it does not apply.
 */
export function specialOutcome(
  run: Judging,
  point: PreparedPoint,
  limit: PreparedLimit,
  bound: Exclude<PreparedBound, { kind: "accept" }>,
  given: Usable,
): Outcome | undefined {
  const misplaced = unknown(
    explained("limit-not-for-kind", { kind: point.kind, limit: bound.kind }),
  );
  if (bound.kind === "sameAsLast")
    return given.is === "number" ? sameAsLast(run, point, limit, bound, given) : misplaced;
  if ("day" in bound) {
    if (given.is !== "date") return misplaced;
    const outcome = dated(run, limit, bound, given);
    return "verdict" in outcome ? outcome : unknown(outcome);
  }
  const readings = given.is === "number" ? [given] : given.is === "many" ? given.readings : [];
  if (readings.length === 0) return misplaced;
  const value = bound.fixed ?? numberOf(bound.of, run);
  if (isFailure(value)) return unknown(value);
  return numeric(run, point, limit, bound.kind, roundSignificant(value), readings);
}
