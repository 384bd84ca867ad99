import { type Failure, failure, isFailure } from "../formulas/engine-type.ts";
import type { Explanation } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import { compareReading, type Fit } from "./compare.ts";
import { numberOf } from "./expression.ts";
import { explained, type Given, type Usable } from "./given.ts";
import type {
  BoundKind,
  LimitJudgement,
  PointJudgement,
  PointVerdict,
  Verdict,
} from "./judgement.ts";
import type { Asked, Judging } from "./judging.ts";
import type {
  AcceptBound,
  NumericBound,
  PreparedBound,
  PreparedLimit,
  PreparedPoint,
} from "./prepared.ts";
import { type Outcome, specialOutcome } from "./special-bound.ts";
import { standsFor } from "./stands-for.ts";
import { Tally } from "./tally.ts";
import { whyOfBound } from "./why.ts";

const NO_LIMITS: readonly LimitJudgement[] = [];
const NOT_EXPLAINED = explained("not-explained");

const plain = (verdict: PointVerdict, why: Explanation, asked = true): PointJudgement => ({
  verdict,
  bound: null,
  why,
  limits: NO_LIMITS,
  asked,
});

const NOT_ASKED = plain(null, explained("not-asked"), false);
export const NOT_ANSWERED = plain("undecided", explained("not-answered"));
const UNLIMITED = plain(null, explained("no-limits"));
const UNLIMITED_MISSING = plain(null, explained("not-answered"));
const NO_LIMIT_APPLIES = plain("undecided", explained("no-limit-applies"));

type PlainBound = NumericBound | AcceptBound;

/** A bound that takes one comparison: most are, and a round judges hundreds of thousands of them. */
const isPlain = (bound: PreparedBound, limit: PreparedLimit, given: Usable): bound is PlainBound =>
  bound.kind === "accept" ||
  (limit.decision === undefined && given.is === "number" && "of" in bound);

/** A number that no run changes: without reasons it takes the comparison and nothing more. */
const isFixed = (
  bound: PreparedBound,
  limit: PreparedLimit,
): bound is NumericBound & { readonly fixed: number } =>
  "of" in bound && bound.fixed !== undefined && limit.decision === undefined;

const accepts = (accepted: ReadonlySet<unknown>, given: Usable): boolean | undefined => {
  if (given.is === "word" || given.is === "number") return accepted.has(given.value);
  return given.is === "words" ? given.values.every((word) => accepted.has(word)) : undefined;
};

/**
 * The number a bound stands for now; undefined for a list of what is accepted. A failure when it
 * cannot be had, or says nothing about this kind of answer.
 */
function boundNow(
  bound: PlainBound,
  point: PreparedPoint,
  given: Usable,
  run: Judging,
): number | Failure | undefined {
  const fits =
    bound.kind === "accept"
      ? given.is === "word" || given.is === "words" || point.kind === "graded"
      : given.is === "number";
  if (!fits) return failure("limit-not-for-kind", { kind: point.kind, limit: bound.kind });
  if (bound.kind === "accept" || bound.fixed !== undefined) return bound.fixed;
  const outcome = numberOf(bound.of, run);
  return isFailure(outcome) ? outcome : roundSignificant(outcome);
}

function fitOf(bound: PlainBound, value: number | Failure | undefined, given: Usable): Fit {
  if (bound.kind === "accept") {
    const accepted = value === undefined ? accepts(bound.accepted, given) : undefined;
    return accepted === undefined ? "undecided" : accepted ? "pass" : "fail";
  }
  return typeof value === "number" && given.is === "number"
    ? compareReading(bound.kind, given.comparator, given.value, value)
    : "undecided";
}

const answerOf = (given: Usable): string | number | readonly string[] => {
  if (given.is === "words") return given.values;
  return given.is === "word" || given.is === "number" ? given.value : "";
};

function whyOf(
  bound: PlainBound,
  point: PreparedPoint,
  given: Usable,
  value: number | Failure | undefined,
  fit: Fit,
): Explanation {
  if (typeof value === "object") return value;
  if (bound.kind !== "accept" && value !== undefined && given.is === "number")
    return whyOfBound(bound.kind, fit, given, value, point.unit);
  const accept = bound.kind === "accept" ? bound.accept : [];
  return explained(fit === "pass" ? "accepted" : "not-accepted", {
    answer: answerOf(given),
    accept,
  });
}

function limitJudgement(
  { index, severity, basis }: PreparedLimit,
  kind: BoundKind,
  verdict: Verdict,
  why: Explanation,
  bound: number | null,
  working?: string,
  more?: Outcome["more"],
): LimitJudgement {
  const judged: { -readonly [Key in keyof LimitJudgement]: LimitJudgement[Key] } = {
    index,
    severity,
    kind,
    bound,
    verdict,
    why,
  };
  if (working !== undefined) judged.working = working;
  if (basis !== undefined) judged.basis = basis;
  return more === undefined ? judged : { ...judged, ...more };
}

const workingOf = (bound: PreparedBound, run: Judging): string | undefined =>
  "of" in bound ? bound.of.working?.(run) : undefined;

/** Whether a limit applies; a failure when its condition cannot be had: it might apply. */
function applies({ when }: PreparedLimit, run: Judging): boolean | Failure {
  if (when === undefined) return true;
  const outcome = when.evaluate(run);
  return typeof outcome === "boolean" || isFailure(outcome)
    ? outcome
    : failure("wrong-type", { name: when.source, expected: "boolean" });
}

function judgeUsable(
  run: Judging,
  point: PreparedPoint,
  given: Usable,
  explain: boolean,
): PointJudgement {
  const tally = new Tally();
  const limits: LimitJudgement[] | undefined = explain ? [] : undefined;
  let decisive = NOT_EXPLAINED;
  for (const limit of point.limits) {
    const applied = applies(limit, run);
    if (applied === false) continue;
    if (applied !== true) {
      if (tally.add("undecided", null, Number.POSITIVE_INFINITY) && limits) decisive = applied;
      const kind = limit.bounds[0]?.kind;
      if (limits && kind !== undefined)
        limits.push(limitJudgement(limit, kind, "undecided", applied, null));
      continue;
    }
    for (const bound of limit.bounds) {
      if (limits === undefined && given.is === "number" && isFixed(bound, limit)) {
        const { kind, fixed } = bound;
        const fit = compareReading(kind, given.comparator, given.value, fixed);
        const away = Math.abs(given.value - fixed);
        tally.add(fit === "fail" ? limit.severity : fit, fixed, away);
        continue;
      }
      if (!isPlain(bound, limit, given)) {
        const outcome = specialOutcome(run, point, limit, bound, given);
        if (outcome === undefined) continue;
        const { verdict, why, bound: number } = outcome;
        if (tally.add(verdict, number, outcome.distance) && limits) decisive = why;
        const working = number === null ? undefined : workingOf(bound, run);
        limits?.push(
          limitJudgement(limit, bound.kind, verdict, why, number, working, outcome.more),
        );
        continue;
      }
      const value = boundNow(bound, point, given, run);
      const fit = fitOf(bound, value, given);
      const verdict = fit === "fail" ? limit.severity : fit;
      const number = typeof value === "number" ? value : null;
      const distance =
        number !== null && given.is === "number"
          ? Math.abs(given.value - number)
          : Number.POSITIVE_INFINITY;
      const decides = tally.add(verdict, number, distance);
      if (limits === undefined) continue;
      const why = whyOf(bound, point, given, value, fit);
      if (decides) decisive = why;
      const working =
        bound.kind === "accept" || number === null ? undefined : bound.of.working?.(run);
      limits.push(limitJudgement(limit, bound.kind, verdict, why, number, working));
    }
  }
  const { verdict, bound } = tally;
  if (verdict === undefined) return NO_LIMIT_APPLIES;
  return { verdict, bound, why: decisive, limits: limits ?? NO_LIMITS, asked: true };
}

/** What was worked out, where anything was: it stands in no answer. */
const workedOut = (point: PreparedPoint, given: Usable): number | undefined => {
  if (point.kind !== "calculated" && point.several === undefined) return undefined;
  return standsFor(point, given);
};

function judgeGiven(
  run: Judging,
  point: PreparedPoint,
  given: Given,
  explain: boolean,
): PointJudgement {
  const limited = point.limits.length > 0;
  switch (given.is) {
    case "missing":
      return limited ? NOT_ANSWERED : UNLIMITED_MISSING;
    case "absent": {
      const { reason } = given;
      if (point.absentAllowed.includes(reason))
        return plain(limited ? "not-counted" : null, explained("absent", { reason }));
      const why = explained("absence-not-allowed", { reason, allowed: point.absentAllowed });
      return plain(limited ? "undecided" : null, why);
    }
    case "unusable":
      return plain(limited ? "undecided" : null, given.why);
    case "pending":
      return plain(
        limited ? "undecided" : null,
        explained("result-awaited", { sample: given.sample }),
      );
    default: {
      const judged = limited ? judgeUsable(run, point, given, explain) : UNLIMITED;
      const value = workedOut(point, given);
      if (value === undefined) return judged;
      const working = explain ? point.calculate?.working?.(run) : undefined;
      return working === undefined ? { ...judged, value } : { ...judged, value, working };
    }
  }
}

/**
 * The verdict on one point. On a point with limits whatever is missing, unusable or unknown is
 * undecided, never a pass; without limits there is no verdict.
 */
export function judgePoint(
  run: Judging,
  point: PreparedPoint,
  asked: Asked,
  given: Given,
  explain: boolean,
): PointJudgement {
  if (asked === true) return judgeGiven(run, point, given, explain);
  if (asked === false) return NOT_ASKED;
  return asked.code === "stopped" ? plain(null, asked, false) : plain("undecided", asked);
}
