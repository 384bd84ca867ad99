import type { ScoreDefinition } from "../checklist/meta-schema.ts";
import { explained } from "./given.ts";
import type { ScoreJudgement } from "./judgement.ts";
import type { Prepared } from "./prepared.ts";
import { roundRatio } from "./round-ratio.ts";
import type { Run } from "./run.ts";

interface Count {
  sum: number;
  most: number;
  answered: number;
}

/** Adds up the graded points; a string of a code and point when the score cannot be had. */
function count(
  prepared: Prepared,
  score: ScoreDefinition,
  run: Run,
):
  | Count
  | { readonly cause: "score-point-undecided" | "score-point-ungraded"; readonly point: string } {
  const total: Count = { sum: 0, most: 0, answered: 0 };
  for (const name of score.of) {
    const point = prepared.byId.get(name);
    if (point?.kind !== "graded" || point.maximum === undefined)
      return { cause: "score-point-ungraded", point: name };
    const asked = run.asked(point);
    if (asked === false) continue;
    const given = asked === true ? run.given(point) : undefined;
    if (given?.is === "absent" && point.absentAllowed.includes(given.reason)) continue;
    if (given?.is !== "number") return { cause: "score-point-undecided", point: name };
    total.sum += given.value;
    total.most += point.maximum;
    total.answered += 1;
  }
  return total;
}

const without = (
  verdict: "undecided" | "not-evaluated",
  why: ScoreJudgement["why"],
): ScoreJudgement => ({ score: null, verdict, band: null, next: null, answered: 0, why });

/**
 * A score as a share of the most the answered points allow, in per cent, rounded exactly. Every
 * point asked is answered or absent for an allowed reason, or the score is undecided.
 */
export function judgeScore(prepared: Prepared, score: ScoreDefinition, run: Run): ScoreJudgement {
  const total = count(prepared, score, run);
  if ("cause" in total) return without("undecided", explained(total.cause, { point: total.point }));
  const { sum, most, answered } = total;
  if (answered === 0) return without("not-evaluated", explained("score-nothing-answered"));
  // A maximum of nothing has no share.
  if (most <= 0 || !Number.isSafeInteger(most) || !Number.isSafeInteger(sum * 100))
    return without("undecided", explained("score-point-ungraded", { point: score.of[0] ?? "" }));
  const value = roundRatio(sum * 100, most, score.round);
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
