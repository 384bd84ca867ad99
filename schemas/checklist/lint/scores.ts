import { nearest, wordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, ScoreDefinition } from "../meta-schema.ts";

/** Lowest score in per cent: whichever points are answered, none falls below its own share. */
const lowestScore = (doc: Checklist, score: ScoreDefinition): number | null => {
  const shares = score.of.map((name) => {
    const point = Object.hasOwn(doc.properties, name) ? doc.properties[name] : undefined;
    if (point?.minimum === undefined || point.maximum === undefined) return Number.NaN;
    return (100 * point.minimum) / point.maximum;
  });
  const lowest = Math.min(...shares);
  const step = 10 ** score.round.decimals;
  return Number.isFinite(lowest) ? Math.floor(lowest * step) / step : null;
};

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
    return [...members, ...lintBands(pointer, score, lowestScore(doc, score))];
  });
};
