import type {
  Answer,
  Judge,
  JudgeInput,
  Judgement,
  LimitJudgement,
  PointJudgement,
} from "@roundbook/schemas";
import { quantityOf } from "./fields/reading-entry.ts";
import type { FormPoint } from "./model/sections.ts";
import { waitRule } from "./model/wait.ts";
import { limited } from "./model/worded-judgement.ts";

export interface Asked {
  readonly limits: readonly LimitJudgement[];
  readonly expected: number | undefined;
}
export const NOTHING_ASKED: Asked = { limits: [], expected: undefined };

/** An answer of which only what it is measured against is used; its verdict is never looked at. */
function standIn(point: FormPoint, on: string | undefined, count: number): Answer | undefined {
  const rule = waitRule(point);
  const elapsed = rule && { elapsed: rule.atLeast ?? rule.atMost ?? 0 };
  const reading = { value: 0, unit: quantityOf(point).unit, ...elapsed };
  switch (point.kind) {
    case "reading":
      return reading;
    case "readings":
      return Array.from({ length: count }, () => reading);
    case "sample":
      return { sample: "-", result: reading };
    case "count":
      return 0;
    case "date":
      return on;
    default:
      return undefined;
  }
}

/** The limits that apply and the readings that are asked for, known before anything is written. */
export function askedOf(
  point: FormPoint,
  judge: Judge,
  judgement: Judgement,
  input: JudgeInput,
): Asked {
  const judged = judgement.points[point.id];
  if (judged === undefined) return NOTHING_ASKED;
  const tried = (count: number) => {
    const answer = standIn(point, input.on, count);
    return answer === undefined
      ? undefined
      : judge.judgePoint(point.id, withAnswer(input, point.id, answer));
  };
  const expected = point.kind === "readings" ? countOf(point, tried(1)) : undefined;
  if (judged.limits.length > 0) return { limits: judged.limits, expected };
  const limits = tried(expected ?? 1)?.limits ?? [];
  // Worded as the point is shown, which the judge does not know.
  const asked = limits.map((limit) =>
    limited({ ...limit, verdict: "undecided" }, point.definition.limits?.[limit.index]?.basis),
  );
  return { limits: asked, expected };
}

/** How many readings are asked for: as written, or as the judge says of one that stands alone. */
function countOf(point: FormPoint, alone: PointJudgement | undefined): number | undefined {
  const count = point.definition.several?.count;
  if (typeof count === "number") return count;
  const told = alone?.why.code === "too-few-readings" ? alone.why.params.count : undefined;
  return typeof told === "number" ? told : undefined;
}

export const withAnswer = (input: JudgeInput, id: string, answer: Answer): JudgeInput => ({
  ...input,
  answers: { ...input.answers, [id]: answer },
});
