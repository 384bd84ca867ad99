import type { Answers, Checklist, Judgement, Problem } from "@roundbook/schemas";
import { isUntouched } from "./untouched.ts";

export interface Lack {
  readonly point: string;
  readonly problem: Problem;
}

const isPoint = (document: Checklist, token: string): boolean =>
  Object.hasOwn(document.properties, token);

/** The point a problem is about: the first token of its pointer that names one. */
export function pointOf(document: Checklist, { pointer }: Problem): string | undefined {
  return pointer.split("/").find((token) => isPoint(document, token));
}

export interface Lacks {
  /** Asked, mandatory and not answered, or answered with what cannot be used: these block finishing. */
  readonly answers: readonly Lack[];
  /** Evidence a verdict asks for: without it the inspection is not complete. */
  readonly evidence: readonly Lack[];
  /** Told, no more: an absence that is not among the reasons a point allows. */
  readonly told: readonly Lack[];
}

/** What keeps a filled checklist from being finished or from being complete. */
export function lacksOf(document: Checklist, { problems }: Judgement): Lacks {
  const answers: Lack[] = [];
  const evidence: Lack[] = [];
  const told: Lack[] = [];
  for (const problem of problems) {
    const point = pointOf(document, problem);
    if (point === undefined) continue;
    const list =
      problem.code === "evidence-missing"
        ? evidence
        : problem.code === "absence-not-allowed" || problem.code === "ask-undecided"
          ? told
          : answers;
    list.push({ point, problem });
  }
  return { answers, evidence, told };
}

export type Hindrance = "nothing" | "blocked" | "evidence";

/**
 * Why an inspection may not be written yet: nothing is answered, a mandatory point is, or evidence
 * is missing and the person has not chosen to go without.
 */
export function hindrance(
  document: Checklist,
  judgement: Judgement,
  answers: Answers,
  withoutEvidence: boolean,
): Hindrance | undefined {
  if (isUntouched(answers)) return "nothing";
  const lacks = lacksOf(document, judgement);
  if (lacks.answers.length > 0) return "blocked";
  return lacks.evidence.length > 0 && !withoutEvidence ? "evidence" : undefined;
}
