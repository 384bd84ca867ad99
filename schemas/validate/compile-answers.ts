import { splitAnswerName } from "../checklist/answer-name.ts";
import { pointKind } from "../checklist/guards.ts";
import { issueDocument } from "../checklist/issue-document.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
import { allowsMember, membersSaid, repeatsByPoint } from "../checklist/repeats.ts";
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

/**
 * Compiles the issued document itself into a check of whole sets of answers: one problem per point
 * whose answer is ill-formed. `validateAnswers` finds the same points without generating code.
 */
export const compileAnswers = (doc: Checklist): ((answers: unknown) => readonly Problem[]) => {
  const validate = createAjv().compile(issueDocument(doc));
  const points = new Map(Object.entries(doc.properties));
  const known = [...points.keys()];
  const repeats = repeatsByPoint(doc);
  return (answers) => {
    const heavy = measure(answers, DOCUMENT_LIMITS);
    if (heavy && heavy.code !== "bad-text") return [heavy];
    if (validate(answers) && !heavy) return [];
    const names = new Set<string>(heavy ? garbled(answers) : []);
    for (const { instancePath, params, propertyName } of validate.errors ?? []) {
      const named: unknown = params.additionalProperty ?? params.propertyName ?? propertyName;
      const first = instancePath.split("/")[1];
      if (first !== undefined) names.add(first.replaceAll("~1", "/").replaceAll("~0", "~"));
      else if (typeof named === "string") names.add(named);
    }
    if (names.size === 0) return [problem("", "wrong-type", { expected: ["object"] })];
    const budget = wordBudget();
    return [...names].map((name) => {
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
  };
};
