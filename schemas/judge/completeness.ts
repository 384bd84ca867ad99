import { type Failure, isFailure } from "../formulas/engine-type.ts";
import { nearest, wordBudget } from "../shared/nearest.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { type Given, own } from "./given.ts";
import type { PointVerdict } from "./judgement.ts";
import type { PreparedPoint } from "./prepared.ts";

/** A problem, and whether it keeps the inspection from being complete. */
export interface Finding {
  readonly problem: Problem;
  readonly blocks: boolean;
}

const isNote = (item: unknown): boolean => {
  const note = own(item, "note");
  return typeof note === "string" ? note.trim() !== "" : typeof own(note, "commit") === "string";
};

function countEvidence(evidence: unknown, id: string, kind: "photo" | "note"): number {
  const items = own(evidence, id);
  if (!Array.isArray(items)) return 0;
  return items.filter(
    (item) =>
      own(item, "kind") === kind &&
      (kind === "photo" ? typeof own(item, "sha256") === "string" : isNote(item)),
  ).length;
}

function answerFinding(point: PreparedPoint, given: Given): Finding | undefined {
  const pointer = at("/answers", point.id);
  const blocks = point.mandatory;
  switch (given.is) {
    case "missing":
      return blocks ? { problem: problem(pointer, "mandatory-not-answered"), blocks } : undefined;
    case "absent": {
      const { reason } = given;
      if (point.absentAllowed.includes(reason)) return undefined;
      const params = { reason, allowed: point.absentAllowed };
      return { problem: problem(pointer, "absence-not-allowed", params), blocks };
    }
    case "unusable":
      return { problem: problem(pointer, given.why.code, given.why.params), blocks };
    default:
      return undefined;
  }
}

/** What one point lacks: its answer, or the evidence its verdict asks for. */
export function findingsOf(
  point: PreparedPoint,
  asked: boolean | Failure,
  given: Given,
  verdict: PointVerdict,
  evidence: unknown,
): readonly Finding[] {
  if (asked === false) return [];
  if (isFailure(asked)) {
    const cause = problem(at("/answers", point.id), "ask-undecided", { cause: asked.code });
    return [{ problem: cause, blocks: point.mandatory }];
  }
  const answer = answerFinding(point, given);
  const found = answer === undefined ? [] : [answer];
  if (verdict === null || verdict === "not-counted") return found;
  for (const { kind, on, atLeast = 1 } of point.evidence) {
    if (!on.includes(verdict)) continue;
    const count = countEvidence(evidence, point.id, kind);
    if (count >= atLeast) continue;
    const params = { kind, verdict, atLeast, given: count };
    found.push({
      problem: problem(at("/evidence", point.id), "evidence-missing", params),
      blocks: true,
    });
  }
  return found;
}

/** Answers that belong to no point of the checklist. */
export const strangers = (answers: object, known: ReadonlyMap<string, unknown>): Problem[] => {
  const names = [...known.keys()];
  const budget = wordBudget();
  return Object.keys(answers)
    .filter((point) => !known.has(point))
    .map((point) =>
      problem(at("/answers", point), "unknown-point", {
        point,
        nearest: nearest(point, names, budget),
      }),
    );
};
