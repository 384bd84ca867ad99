import { type Failure, failure, isFailure } from "../formulas/engine-type.ts";
import type { Explanation } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import { compareReading, type Fit } from "./compare.ts";
import { numberOf } from "./expression.ts";
import { explained, type Given } from "./given.ts";
import type {
  BoundKind,
  LimitJudgement,
  PointJudgement,
  PointVerdict,
  Verdict,
} from "./judgement.ts";
import type { PreparedBound, PreparedLimit, PreparedPoint } from "./prepared.ts";
import type { Run } from "./run.ts";
import { whyOfBound } from "./why.ts";

type Usable = Extract<Given, { is: "number" | "word" | "content" }>;

/** How grave a verdict is: the gravest of several decides. */
export const GRAVITY = { pass: 0, advisory: 1, undecided: 2, fail: 3 } as const satisfies Readonly<
  Record<Verdict, number>
>;

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
const NOT_ANSWERED = plain("undecided", explained("not-answered"));
const UNLIMITED = plain(null, explained("no-limits"));
const UNLIMITED_MISSING = plain(null, explained("not-answered"));
const NO_LIMIT_APPLIES = plain("undecided", explained("no-limit-applies"));

/** What one bound makes of an answer, before its limit's severity is known. */
interface Finding {
  readonly fit: Fit;
  readonly bound: number | null;
  readonly distance: number;
  readonly failure?: Failure;
}

const unknown = (cause: Failure): Finding => ({
  fit: "undecided",
  bound: null,
  distance: Number.POSITIVE_INFINITY,
  failure: cause,
});

function find(bound: PreparedBound, point: PreparedPoint, given: Usable, run: Run): Finding {
  if (bound.kind === "accept") {
    if (given.is === "content" || (given.is === "number" && point.kind === "reading"))
      return unknown(failure("limit-not-for-kind", { kind: point.kind, limit: bound.kind }));
    const fit = bound.accepted.has(given.value) ? "pass" : "fail";
    return { fit, bound: null, distance: Number.POSITIVE_INFINITY };
  }
  if (given.is !== "number")
    return unknown(failure("limit-not-for-kind", { kind: point.kind, limit: bound.kind }));
  let value = bound.fixed;
  if (value === undefined) {
    const outcome = numberOf(bound.of, run);
    if (isFailure(outcome)) return unknown(outcome);
    value = roundSignificant(outcome);
  }
  return {
    fit: compareReading(bound.kind, given.comparator, given.value, value),
    bound: value,
    distance: Math.abs(given.value - value),
  };
}

function whyOf(
  bound: PreparedBound,
  point: PreparedPoint,
  given: Usable,
  found: Finding,
): Explanation {
  if (found.failure !== undefined) return found.failure;
  if (bound.kind === "accept" || given.is !== "number" || found.bound === null) {
    const answer = given.is === "content" ? "" : given.value;
    const accept = bound.kind === "accept" ? bound.accept : [];
    return explained(found.fit === "pass" ? "accepted" : "not-accepted", { answer, accept });
  }
  return whyOfBound(bound.kind, found.fit, given, found.bound, point.unit);
}

/** Picks the bound that decides: the gravest, the first of equals, and of passes the nearest. */
class Tally {
  verdict: Verdict | undefined;
  bound: number | null = null;
  why: Explanation = NOT_EXPLAINED;
  readonly limits: LimitJudgement[] = [];
  readonly #run: Run;
  readonly #point: PreparedPoint;
  readonly #explain: boolean;
  #distance = Number.POSITIVE_INFINITY;

  constructor(run: Run, point: PreparedPoint, explain: boolean) {
    this.#run = run;
    this.#point = point;
    this.#explain = explain;
  }

  #takes(verdict: Verdict, distance: number): boolean {
    if (this.verdict === undefined) return true;
    const more = GRAVITY[verdict] - GRAVITY[this.verdict];
    return more > 0 || (more === 0 && verdict === "pass" && distance < this.#distance);
  }

  add(limit: PreparedLimit, bound: PreparedBound, given: Usable): void {
    const found = find(bound, this.#point, given, this.#run);
    const verdict = found.fit === "fail" ? limit.severity : found.fit;
    const decides = this.#takes(verdict, found.distance);
    if (decides) {
      this.verdict = verdict;
      this.bound = found.bound;
      this.#distance = found.distance;
    }
    if (!this.#explain) return;
    const why = whyOf(bound, this.#point, given, found);
    if (decides) this.why = why;
    this.#record(limit, bound.kind, verdict, why, found.bound, workingOf(bound, found, this.#run));
  }

  /** A limit whose condition could not be had might have applied. */
  fail(limit: PreparedLimit, why: Explanation): void {
    if (this.#takes("undecided", Number.POSITIVE_INFINITY)) {
      this.verdict = "undecided";
      this.bound = null;
      if (this.#explain) this.why = why;
    }
    const kind = limit.bounds[0]?.kind;
    if (this.#explain && kind !== undefined)
      this.#record(limit, kind, "undecided", why, null, undefined);
  }

  #record(
    { index, severity, basis }: PreparedLimit,
    kind: BoundKind,
    verdict: Verdict,
    why: Explanation,
    bound: number | null,
    working: string | undefined,
  ): void {
    this.limits.push({
      index,
      severity,
      kind,
      bound,
      verdict,
      ...(working === undefined ? {} : { working }),
      ...(basis === undefined ? {} : { basis }),
      why,
    });
  }
}

const workingOf = (bound: PreparedBound, found: Finding, run: Run): string | undefined =>
  bound.kind === "accept" || found.bound === null ? undefined : bound.of.working?.(run);

function judgeUsable(
  run: Run,
  point: PreparedPoint,
  given: Usable,
  explain: boolean,
): PointJudgement {
  const tally = new Tally(run, point, explain);
  for (const limit of point.limits) {
    const applies = limit.when === undefined ? true : limit.when.evaluate(run);
    if (applies === false) continue;
    if (applies === true) for (const bound of limit.bounds) tally.add(limit, bound, given);
    else
      tally.fail(
        limit,
        isFailure(applies)
          ? applies
          : failure("wrong-type", { name: limit.when?.source ?? "", expected: "boolean" }),
      );
  }
  const { verdict, bound, why, limits } = tally;
  return verdict === undefined ? NO_LIMIT_APPLIES : { verdict, bound, why, limits, asked: true };
}

/**
 * The verdict on one point. On a point with limits whatever is missing, unusable or unknown is
 * undecided, never a pass; without limits there is no verdict.
 */
export function judgePoint(
  run: Run,
  point: PreparedPoint,
  asked: boolean | Failure,
  given: Given,
  explain: boolean,
): PointJudgement {
  if (asked === false) return NOT_ASKED;
  if (asked !== true) return plain("undecided", asked);
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
    default:
      return limited ? judgeUsable(run, point, given, explain) : UNLIMITED;
  }
}
