import type { PointDefinition } from "@roundbook/schemas";

export interface Choice {
  readonly value: string;
  readonly title: string;
}

/** The answers a choice, or a choice of several, offers, in the order its checklist gives them. */
export const choicesOf = ({ oneOf, items }: PointDefinition): readonly Choice[] =>
  (oneOf ?? items?.oneOf ?? []).flatMap((one) =>
    "const" in one ? [{ value: one.const, title: one.title }] : [],
  );

const LONGEST_STRIP = 12;

/** The whole grades of a graded point, lowest first: 1 to 5 unless the checklist says otherwise. */
export function gradesOf(definition: PointDefinition): readonly number[] {
  const lowest = definition.minimum ?? 1;
  const highest = definition.maximum ?? 5;
  const count = Math.min(Math.max(highest - lowest + 1, 0), LONGEST_STRIP);
  return Array.from({ length: count }, (_, step) => lowest + step);
}
