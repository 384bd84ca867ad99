import { splitAnswerName } from "../checklist/answer-name.ts";
import { pointKind } from "../checklist/guards.ts";
import { issueDocument } from "../checklist/issue-document.ts";
import type { Checklist, PointDefinition } from "../checklist/meta-schema.ts";
import { allowsMember, membersSaid, repeatsByPoint } from "../checklist/repeats.ts";
import { parseCivilDate } from "../due/civil.ts";
import { createPatternEngine } from "../patterns/index.ts";
import { measure } from "../shared/measure.ts";
import { nearest, wordBudget } from "../shared/nearest.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { createAjv } from "./ajv.ts";
import { DOCUMENT_LIMITS } from "./compile-schema.ts";

/** Names of the answers that hold a text that cannot be kept. */
const garbled = (answers: unknown): readonly string[] =>
  Object.entries(answers ?? {}).flatMap(([name, answer]) =>
    measure(answer, DOCUMENT_LIMITS) ? [name] : [],
  );

const patterns = createPatternEngine();

/** Days that no month has, of which a pattern knows nothing. */
const impossibleDays = (points: ReadonlyMap<string, PointDefinition>, answers: unknown) =>
  Object.entries(answers ?? {}).flatMap(([name, answer]) => {
    const point = points.get(splitAnswerName(name).point);
    const isDay = typeof answer === "string" && parseCivilDate(answer) !== undefined;
    return point && pointKind(point) === "date" && typeof answer === "string" && !isDay
      ? [problem(at("", name), "answer-no-such-day", { answer })]
      : [];
  });

/**
 * Compiles the issued document itself into a check of whole sets of answers: one problem per point
 * whose answer is ill-formed. `validateAnswers` finds the same points without generating code.
 * @throws Error for a pattern that lint refuses.
 */
export const compileAnswers = (doc: Checklist): ((answers: unknown) => readonly Problem[]) => {
  const validate = createAjv(patterns).compile(issueDocument(doc));
  const points = new Map(Object.entries(doc.properties));
  const known = [...points.keys()];
  const repeats = repeatsByPoint(doc);
  return (answers) => {
    const heavy = measure(answers, DOCUMENT_LIMITS);
    if (heavy && heavy.code !== "bad-text") return [heavy];
    if (validate(answers) && !heavy) return impossibleDays(points, answers);
    const names = new Set<string>(heavy ? garbled(answers) : []);
    for (const { instancePath, params, propertyName } of validate.errors ?? []) {
      const named: unknown = params.additionalProperty ?? params.propertyName ?? propertyName;
      const first = instancePath.split("/")[1];
      if (first !== undefined) names.add(first.replaceAll("~1", "/").replaceAll("~0", "~"));
      else if (typeof named === "string") names.add(named);
    }
    if (names.size === 0) return [problem("", "wrong-type", { expected: ["object"] })];
    const budget = wordBudget();
    const days = impossibleDays(points, answers).filter(
      ({ pointer }) => ![...names].some((name) => at("", name) === pointer),
    );
    const found = [...names].map((name) => {
      const { point, member } = splitAnswerName(name);
      const definition = points.get(point);
      if (!definition) {
        const near = nearest(name, known, budget);
        return problem(at("", name), "unknown-point", { point: name, nearest: near });
      }
      const repeat = repeats.get(point)?.repeat;
      const fits = repeat ? member !== null && allowsMember(repeat, member) : member === null;
      const members = repeat ? membersSaid(repeat) : [];
      return fits
        ? problem(at("", name), "answer-shape", { kind: pointKind(definition) })
        : problem(at("", name), "unknown-member", { point, member, members });
    });
    return [...found, ...days];
  };
};
