import type { Answers, Judgement } from "@roundbook/schemas";
import type { FormPoint, Section } from "./sections.ts";

/** The sections with the points that are asked; one with none is not shown. Numbers stay as they are. */
export function askedOf(sections: readonly Section[], { points }: Judgement): readonly Section[] {
  return sections
    .map((section) => {
      const asked = section.points.filter(({ id }) => points[id]?.asked ?? true);
      return asked.length === section.points.length ? section : { ...section, points: asked };
    })
    .filter((section) => section.points.length > 0);
}

/** The first point of a section that nobody answered, or none. */
export const firstOpen = (section: Section, answers: Answers): string | null =>
  section.points.find(({ id }) => answers[id] === undefined)?.id ?? null;

/** The next point after `from` in its section that nobody answered; the first one from nowhere. */
export function nextOpen(
  section: Section,
  answers: Answers,
  from: string | null,
): FormPoint | undefined {
  const at = section.points.findIndex(({ id }) => id === from);
  return section.points.slice(at + 1).find(({ id }) => answers[id] === undefined);
}
