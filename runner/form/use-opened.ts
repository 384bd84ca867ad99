import type { Answer, Judge, JudgeInput, Judgement } from "@roundbook/schemas";
import { useMemo, useState } from "react";
import { type Asked, askedOf, NOTHING_ASKED } from "./asked-of.ts";
import type { Draft } from "./fields/field.ts";
import { openingDraft } from "./fields/reading-entry.ts";
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
