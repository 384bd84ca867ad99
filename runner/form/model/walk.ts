import type { Answers, Judgement, PointJudgement } from "@roundbook/schemas";
import type { FormPoint, Section } from "./sections.ts";

/** Another point's verdict stopped it: it stands on the sheet, struck, and is not asked. */
export const isStopped = (judged: PointJudgement | undefined): boolean =>
  judged?.asked === false && judged.why.code === "stopped";

/** The sections with the points that stand on the sheet; one with none is not shown. Numbers stay as they are. */
export function askedOf(sections: readonly Section[], { points }: Judgement): readonly Section[] {
  return sections
    .map((section) => {
      const asked = section.points.filter(
        ({ id }) => (points[id]?.asked ?? true) || isStopped(points[id]),
      );
      return asked.length === section.points.length ? section : { ...section, points: asked };
    })
    .filter((section) => section.points.length > 0);
}

/** A point that waits for a person: nobody answered it, and it is neither stopped nor worked out. */
const isWaiting = ({ id, kind }: FormPoint, answers: Answers, { points }: Judgement): boolean =>
  answers[id] === undefined && kind !== "calculated" && !isStopped(points[id]);

/** The first point of a section that nobody answered, or none. */
export const firstOpen = (
  section: Section,
  answers: Answers,
  judgement: Judgement,
): string | null =>
  section.points.find((point) => isWaiting(point, answers, judgement))?.id ?? null;

/** The next point after `from` in its section that nobody answered; the first one from nowhere. */
export function nextOpen(
  section: Section,
  answers: Answers,
  judgement: Judgement,
  from: string | null,
): FormPoint | undefined {
  const at = section.points.findIndex(({ id }) => id === from);
  return section.points.slice(at + 1).find((point) => isWaiting(point, answers, judgement));
}
