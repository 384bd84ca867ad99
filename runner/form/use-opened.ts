import type { Answer, Judge, JudgeInput, Judgement, LimitJudgement } from "@roundbook/schemas";
import { useMemo, useState } from "react";
import type { Draft } from "./fields/field.ts";
import { openingDraft, quantityOf } from "./fields/reading-entry.ts";
import type { FormPoint, Section } from "./model/sections.ts";
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
function standIn(point: FormPoint, on: string | undefined): Answer | undefined {
  const reading = { value: 0, unit: quantityOf(point).unit };
  switch (point.kind) {
    case "reading":
      return reading;
    case "readings":
      return [reading];
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
  const count = point.definition.several?.count;
  const fixed = typeof count === "number" ? count : undefined;
  const answer = standIn(point, input.on);
  if (answer === undefined || (judged.limits.length > 0 && point.kind !== "readings"))
    return { limits: judged.limits, expected: fixed };
  const answers = { ...input.answers, [point.id]: answer };
  const { why, limits } = judge.judgePoint(point.id, { ...input, answers });
  const told = why.code === "too-few-readings" ? why.params.count : 1;
  const expected = fixed ?? (typeof told === "number" ? told : undefined);
  if (judged.limits.length > 0) return { limits: judged.limits, expected };
  return { limits: limits.map((limit) => ({ ...limit, verdict: "undecided" })), expected };
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
  const draft = kept?.id === point.id ? kept.draft : openingDraft(point, input.answers[point.id]);
  return {
    point,
    draft,
    onDraft: (next) => setKept({ id: point.id, draft: next }),
    ...asked,
    absenceOpen: absence === point.id,
    onAbsence: (open) => setAbsence(open ? point.id : undefined),
  };
}
