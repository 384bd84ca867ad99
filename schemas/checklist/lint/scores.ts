import { nearest, type WordBudget, wordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, ScoreDefinition } from "../meta-schema.ts";
import { MOST_MEMBERS, repeatsByPoint } from "../repeats.ts";

/** The lowest grade of a point of a score, its highest, how much it counts and how often at most. */
const membersOf = (doc: Checklist, score: ScoreDefinition) => {
  const repeats = repeatsByPoint(doc);
  return score.of.map((name) => {
    const point = Object.hasOwn(doc.properties, name) ? doc.properties[name] : undefined;
    const weights = score.weights ?? {};
    const weight = Object.hasOwn(weights, name) ? (weights[name] ?? 1) : 1;
    const repeat = repeats.get(name)?.repeat;
    const times = repeat ? (repeat.members?.length ?? repeat.atMost ?? MOST_MEMBERS) : 1;
    const { minimum = Number.NaN, maximum = Number.NaN } = point ?? {};
    return { minimum, maximum, weight, times };
  });
};

/**
 * The lowest score there can be, whichever points are answered: a share or a mean falls below none
 * of its parts, a sum is least with what takes from it alone, or else with its smallest part.
 */
const lowestScore = (doc: Checklist, score: ScoreDefinition): number | null => {
  const members = membersOf(doc, score);
  const lowest = () => {
    switch (score.method) {
      case "share-of-maximum":
        return Math.min(...members.map(({ minimum, maximum }) => (100 * minimum) / maximum));
      case "mean":
        return Math.min(...members.map(({ minimum }) => minimum));
      case "sum": {
        const parts = members.map(({ minimum, weight }) => minimum * weight);
        const taken = members.reduce(
          (sum, { minimum, weight, times }) => sum + Math.min(minimum, 0) * weight * times,
          0,
        );
        return taken < 0 ? taken : Math.min(...parts);
      }
    }
  };
  const step = 10 ** score.round.decimals;
  const least = Math.floor(roundSignificant(lowest() * step)) / step;
  return Number.isFinite(least) ? least : null;
};

const lintWeights = (
  pointer: string,
  score: ScoreDefinition,
  budget: WordBudget,
): readonly Problem[] =>
  Object.keys(score.weights ?? {}).flatMap((point) => {
    if (score.of.includes(point)) return [];
    const near = nearest(point, score.of, budget);
    return [
      problem(at(pointer, "weights", point), "score-weight-unknown", { point, nearest: near }),
    ];
  });

const lintBands = (pointer: string, score: ScoreDefinition, lowest: number | null) => {
  const problems: Problem[] = [];
  let above = Number.POSITIVE_INFINITY;
  for (const [index, { from }] of score.bands.entries()) {
    if (from >= above) {
      const place = at(pointer, "bands", index, "from");
      problems.push(problem(place, "bands-not-descending", { from, above }));
    }
    above = from;
  }
  if (problems.length === 0 && lowest !== null && above > lowest) {
    const place = at(pointer, "bands", score.bands.length - 1, "from");
    problems.push(problem(place, "bands-gap", { lowest, from: above }));
  }
  return problems;
};

/** Scores add graded points up, and every score they can come to falls in a band. */
export const lintScores = (doc: Checklist): readonly Problem[] => {
  const budget = wordBudget();
  const known = Object.keys(doc.properties);
  return Object.entries(doc.scores ?? {}).flatMap(([name, score]) => {
    const pointer = at("/scores", name);
    const members = score.of.flatMap((point, index) => {
      const place = at(pointer, "of", index);
      const definition = Object.hasOwn(doc.properties, point) ? doc.properties[point] : undefined;
      if (!definition) {
        const near = nearest(point, known, budget);
        return [problem(place, "score-unknown-point", { point, nearest: near })];
      }
      if (pointKind(definition) !== "graded") {
        return [problem(place, "score-point-not-graded", { point })];
      }
      return [];
    });
    const weights = lintWeights(pointer, score, budget);
    return [...members, ...weights, ...lintBands(pointer, score, lowestScore(doc, score))];
  });
};
