import { pointKind } from "../checklist/guards.ts";
import { issueDocument } from "../checklist/issue-document.ts";
import type { Checklist } from "../checklist/meta-schema.ts";
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
  return (answers) => {
    const heavy = measure(answers, DOCUMENT_LIMITS);
    if (heavy && heavy.code !== "bad-text") return [heavy];
    if (validate(answers) && !heavy) return [];
    const names = new Set<string>(heavy ? garbled(answers) : []);
    for (const { instancePath, params } of validate.errors ?? []) {
      const extra: unknown = params.additionalProperty;
      const first = instancePath.split("/")[1];
      if (first !== undefined) names.add(first);
      else if (typeof extra === "string") names.add(extra);
    }
    if (names.size === 0) return [problem("", "wrong-type", { expected: ["object"] })];
    const budget = wordBudget();
    return [...names].map((name) => {
      const point = points.get(name);
      return point
        ? problem(at("", name), "answer-shape", { kind: pointKind(point) })
        : problem(at("", name), "unknown-point", {
            point: name,
            nearest: nearest(name, known, budget),
          });
    });
  };
};
