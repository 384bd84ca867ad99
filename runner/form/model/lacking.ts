import {
  type Answers,
  type Checklist,
  type Judgement,
  type Problem,
  pointKind,
  splitAnswerName,
} from "@roundbook/schemas";
import { isUntouched } from "./untouched.ts";

export interface Lack {
  readonly point: string;
  readonly problem: Problem;
}

const isPoint = (document: Checklist, token: string): boolean =>
  Object.hasOwn(document.properties, splitAnswerName(token).point);

/** The answer a problem is about: the first token of its pointer that names one, `point@member` too. */
export function pointOf(document: Checklist, { pointer }: Problem): string | undefined {
  return pointer.split("/").find((token) => isPoint(document, token));
}

export interface Lacks {
  /** Asked, mandatory and not answered, or answered with what cannot be used: these block finishing. */
  readonly answers: readonly Lack[];
  /** Evidence a verdict asks for: without it the inspection is not complete. */
  readonly evidence: readonly Lack[];
  /** Told, no more: what the person on the round cannot mend, and what they chose. */
  readonly told: readonly Lack[];
}

/** A sample waits for its laboratory, a point for what stops it: neither holds the person up. */
const TOLD: ReadonlySet<string> = new Set([
  "absence-not-allowed",
  "ask-undecided",
  "stop-undecided",
  "result-awaited",
  "elapsed-missing",
  "read-too-early",
  "read-too-late",
  "too-few-readings",
  "too-many-readings",
]);

/** Nobody can answer what is worked out, whatever is wrong with it. */
const isCalculated = (document: Checklist, name: string): boolean => {
  const point = document.properties[splitAnswerName(name).point];
  return point !== undefined && pointKind(point) === "calculated";
};

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
        : TOLD.has(problem.code) || isCalculated(document, point)
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
