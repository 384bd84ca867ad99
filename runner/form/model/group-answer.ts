import type { Answers } from "@roundbook/schemas";
import type { Section } from "./sections.ts";

/**
 * The points a group declaration would answer: checks that are asked and that nobody has answered.
 * Readings, choices, grades, texts and photos are never among them.
 */
export function declarable(
  section: Section,
  answers: Answers,
  isAsked: (id: string) => boolean,
): readonly string[] {
  if (!section.groupAnswer) return [];
  return section.points
    .filter(({ id, kind }) => kind === "check" && isAsked(id) && answers[id] === undefined)
    .map(({ id }) => id);
}

/** Those of a section's points that stand answered by the declaration. */
export const declaredIn = (section: Section, declared: readonly string[]): readonly string[] =>
  section.points.map(({ id }) => id).filter((id) => declared.includes(id));
