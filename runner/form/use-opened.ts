import type { Judge, Judgement, LimitJudgement, Particulars } from "@roundbook/schemas";
import { useMemo, useState } from "react";
import type { Draft } from "./fields/field.ts";
import { openingDraft, quantityOf } from "./fields/reading-entry.ts";
import type { Filled } from "./model/filled.ts";
import type { Section } from "./model/sections.ts";
import type { OpenedPoint } from "./section-view.tsx";
import type { Place } from "./use-steps.ts";

export interface OpenedInput {
  readonly place: Place;
  readonly section: Section | undefined;
  readonly judge: Judge;
  readonly judgement: Judgement;
  readonly particulars: Particulars;
  readonly filled: Filled;
}

const NO_LIMITS: readonly LimitJudgement[] = [];

/** The open point with what is being written in it; opening another starts from its own answer. */
export function useOpened(input: OpenedInput): OpenedPoint | undefined {
  const { place, section, judge, judgement, particulars, filled } = input;
  const id = place.at === "section" ? place.open : null;
  const point = section?.points.find((one) => one.id === id);
  const [kept, setKept] = useState<{ id: string; draft: Draft }>();
  const [absence, setAbsence] = useState<string>();

  const judged = point && judgement.points[point.id];
  const limits = useMemo<readonly LimitJudgement[]>(() => {
    if (point?.kind !== "reading" || judged === undefined) return NO_LIMITS;
    if (judged.limits.length > 0) return judged.limits;
    // Asked with a stand-in reading, of which only the bounds are used: they show what will be measured
    // against before anything is written. Its verdict is never looked at.
    const stand = { value: 0, unit: quantityOf(point).unit };
    const answers = { ...filled.answers, [point.id]: stand };
    return judge.judgePoint(point.id, { particulars, answers }).limits.map((limit) => ({
      ...limit,
      verdict: "undecided",
    }));
  }, [point, judged, judge, particulars, filled.answers]);

  if (point === undefined) return undefined;
  const draft = kept?.id === point.id ? kept.draft : openingDraft(point, filled.answers[point.id]);
  return {
    point,
    draft,
    onDraft: (next) => setKept({ id: point.id, draft: next }),
    limits,
    absenceOpen: absence === point.id,
    onAbsence: (open) => setAbsence(open ? point.id : undefined),
  };
}
