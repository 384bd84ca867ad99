import { splitAnswerName } from "../checklist/answer-name.ts";
import { isFailure } from "../formulas/engine-type.ts";
import { nearest, wordBudget } from "../shared/nearest.ts";
import { at, type Problem, problem } from "../shared/problem.ts";
import { type Given, own } from "./given.ts";
import type { PointVerdict } from "./judgement.ts";
import type { Asked, Judging } from "./judging.ts";
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
  const given = items.filter((item) => own(item, "kind") === kind);
  if (kind === "note") return given.filter(isNote).length;
  // One photo named twice is one photo.
  return new Set(given.map((item) => own(item, "sha256")).filter((it) => typeof it === "string"))
    .size;
}

function answerFinding(point: PreparedPoint, name: string, given: Given): Finding | undefined {
  const pointer = at("/answers", name);
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
    // A sample on its way keeps the inspection open, mandatory or not: its result is still to come.
    case "pending":
      return {
        problem: problem(pointer, "result-awaited", { sample: given.sample }),
        blocks: true,
      };
    default:
      return undefined;
  }
}

/** What one point lacks: its answer, or the evidence its verdict asks for. */
export function findingsOf(
  point: PreparedPoint,
  name: string,
  asked: Asked,
  given: Given,
  verdict: PointVerdict,
  isAnswered: boolean,
  evidence: unknown,
): readonly Finding[] {
  if (asked === false) return [];
  if (isFailure(asked)) {
    if (asked.code === "stopped") return [];
    const cause = problem(at("/answers", name), "ask-undecided", { cause: asked.code });
    return [{ problem: cause, blocks: point.mandatory }];
  }
  const answer = answerFinding(point, name, given);
  const found = answer === undefined ? [] : [answer];
  if (point.calculate !== undefined && isAnswered)
    found.push({
      problem: problem(at("/answers", name), "never-answered", { kind: point.kind }),
      blocks: false,
    });
  if (verdict === null || verdict === "not-counted") return found;
  for (const { kind, on, atLeast = 1 } of point.evidence) {
    if (!on.includes(verdict)) continue;
    const count = countEvidence(evidence, name, kind);
    if (count >= atLeast) continue;
    const params = { kind, verdict, atLeast, given: count };
    found.push({
      problem: problem(at("/evidence", name), "evidence-missing", params),
      blocks: true,
    });
  }
  return found;
}

/** Answers that belong to no point of the checklist, or to no member of a repeat. */
export function strangers(
  answers: object,
  points: ReadonlyMap<string, PreparedPoint>,
  known: ReadonlySet<string>,
  run: Judging,
): Problem[] {
  const names = [...points.keys()];
  const budget = wordBudget();
  // In an order of their own: that of the answers is chance.
  return Object.keys(answers)
    .sort()
    .flatMap((name) => {
      if (known.has(name)) return [];
      const place = splitAnswerName(name);
      const point = points.get(place.point);
      if (point === undefined)
        return [
          problem(at("/answers", name), "unknown-point", {
            point: name,
            nearest: nearest(place.point, names, budget),
          }),
        ];
      const members = point.repeat ? run.members(point.repeat).members.map(({ id }) => id) : [];
      const params = { point: place.point, member: place.member, members };
      return [problem(at("/answers", name), "unknown-member", params)];
    });
}
