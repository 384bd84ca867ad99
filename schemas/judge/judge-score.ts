import type { ScoreDefinition } from "../checklist/meta-schema.ts";
import { explained, own } from "./given.ts";
import type { ScoreJudgement } from "./judgement.ts";
import type { Judging } from "./judging.ts";
import type { Prepared, PreparedPoint } from "./prepared.ts";
import { roundRatio } from "./round-ratio.ts";

interface Count {
  sum: number;
  most: number;
  weight: number;
  answered: number;
}

/** Adds up the graded points; a string of a code and point when the score cannot be had. */
function count(
  prepared: Prepared,
  score: ScoreDefinition,
  run: Judging,
):
  | Count
  | { readonly cause: "score-point-undecided" | "score-point-ungraded"; readonly point: string } {
  const total: Count = { sum: 0, most: 0, weight: 0, answered: 0 };
  for (const name of score.of) {
    const point = prepared.byId.get(name);
    if (point?.kind !== "graded" || point.maximum === undefined)
      return { cause: "score-point-ungraded", point: name };
    const weight = own(score.weights, name) ?? 1;
    if (typeof weight !== "number") return { cause: "score-point-ungraded", point: name };
    const runs = runsOf(point, run);
    if (runs === undefined) return { cause: "score-point-undecided", point: name };
    for (const each of runs) {
      const asked = each.asked(point);
      if (asked === false || (asked !== true && asked.code === "stopped")) continue;
      const given = asked === true ? each.given(point) : undefined;
      if (given?.is === "absent" && point.absentAllowed.includes(given.reason)) continue;
      if (given?.is !== "number") return { cause: "score-point-undecided", point: name };
      total.sum += weight * given.value;
      total.most += weight * point.maximum;
      total.weight += weight;
      total.answered += 1;
    }
  }
  return total;
}

/** A point of a repeat counts once per member; undefined where nobody knows how many there are. */
function runsOf({ repeat }: PreparedPoint, run: Judging): readonly Judging[] | undefined {
  if (repeat === undefined) return [run];
  const { expected, members } = run.members(repeat);
  return expected === null ? undefined : members.map(({ id }) => run.forMember(repeat, id));
}

/** What a score is rounded from: whole numbers above and below the line. */
function ratioOf(method: ScoreDefinition["method"], total: Count): readonly [number, number] {
  switch (method) {
    case "share-of-maximum":
      return [total.sum * 100, total.most];
    case "sum":
      return [total.sum, 1];
    case "mean":
      return [total.sum, total.weight];
  }
}

const without = (
  verdict: "undecided" | "not-evaluated",
  why: ScoreJudgement["why"],
): ScoreJudgement => ({ score: null, verdict, band: null, next: null, answered: 0, why });

/**
 * A score: the weighted grades as a share of the most the answered points allow, in per cent, or
 * their sum or mean; rounded exactly. Every point asked is answered or absent for an allowed
 * reason, or the score is undecided.
 */
export function judgeScore(
  prepared: Prepared,
  score: ScoreDefinition,
  run: Judging,
): ScoreJudgement {
  const total = count(prepared, score, run);
  if ("cause" in total) return without("undecided", explained(total.cause, { point: total.point }));
  const { sum, most, answered } = total;
  const [above, below] = ratioOf(score.method, total);
  if (answered === 0) return without("not-evaluated", explained("score-nothing-answered"));
  // A maximum of nothing has no share.
  if (below <= 0 || !Number.isSafeInteger(most) || !Number.isSafeInteger(sum * 100))
    return without("undecided", explained("score-point-ungraded", { point: score.of[0] ?? "" }));
  const value = roundRatio(above, below, score.round);
  const bands = score.bands.toSorted((a, b) => b.from - a.from);
  const band = bands.find(({ from }) => value >= from);
  const facts = { score: value, sum, most, answered };
  if (band === undefined)
    return {
      score: value,
      verdict: "undecided",
      band: null,
      next: null,
      answered,
      why: explained("score-below-bands", facts),
    };
  return {
    score: value,
    verdict: band.outcome ?? null,
    band: band.title,
    next: band.next ?? null,
    answered,
    why: explained("score-band", { ...facts, band: band.title }),
  };
}
