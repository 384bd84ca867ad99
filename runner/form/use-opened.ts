import type {
  Answer,
  Judge,
  JudgeInput,
  Judgement,
  LimitJudgement,
  PointJudgement,
} from "@roundbook/schemas";
import { useMemo, useState } from "react";
import type { Draft } from "./fields/field.ts";
import { openingDraft, quantityOf } from "./fields/reading-entry.ts";
import type { FormPoint, Section } from "./model/sections.ts";
import { waitRule } from "./model/wait.ts";
import { limited } from "./model/worded-judgement.ts";
import type { OpenedPoint } from "./section-view.tsx";
import type { Place } from "./use-steps.ts";

export interface OpenedInput {
  readonly place: Place;
  readonly section: Section | undefined;
  readonly judge: Judge;
  readonly judgement: Judgement;
  /** What is judged: the stand-in takes the place of the open point's own answer. */
  readonly input: JudgeInput;
}

interface Asked {
  readonly limits: readonly LimitJudgement[];
  readonly expected: number | undefined;
}
const NOTHING_ASKED: Asked = { limits: [], expected: undefined };

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
function askedOf(point: FormPoint, judge: Judge, judgement: Judgement, input: JudgeInput): Asked {
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

const withAnswer = (input: JudgeInput, id: string, answer: Answer): JudgeInput => ({
  ...input,
  answers: { ...input.answers, [id]: answer },
});

/** What was answered stands in its boxes; the pen at the first that is empty, else at the last. */
function opening(point: FormPoint, answer: Answer | undefined, expected = Infinity): Draft {
  const draft = openingDraft(point, answer);
  return { ...draft, at: Math.min(draft.at, Math.max(expected - 1, 0)) };
}

/** The open point with what is being written in it; opening another starts from its own answer. */
export function useOpened(given: OpenedInput): OpenedPoint | undefined {
  const { place, section, judge, judgement, input } = given;
  const id = place.at === "section" ? place.open : null;
  const point = section?.points.find((one) => one.id === id);
  const [kept, setKept] = useState<{ id: string; draft: Draft }>();
  const [absence, setAbsence] = useState<string>();
  const asked = useMemo<Asked>(
    () => (point === undefined ? NOTHING_ASKED : askedOf(point, judge, judgement, input)),
    [point, judge, judgement, input],
  );

  if (point === undefined) return undefined;
  const draft =
    kept?.id === point.id ? kept.draft : opening(point, input.answers[point.id], asked.expected);
  return {
    point,
    draft,
    onDraft: (next) => setKept({ id: point.id, draft: next }),
    ...asked,
    absenceOpen: absence === point.id,
    onAbsence: (open) => setAbsence(open ? point.id : undefined),
  };
}
