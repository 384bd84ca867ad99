import {
  type ParticularDefinition,
  type Particulars,
  particularsInOrder,
} from "@roundbook/schemas";
import { particularKind } from "./around-edit.ts";
import type { DraftDocument } from "./draft-document.ts";

const ROUND_FIGURES = [10, 5, 2, 1, 20, 50, 100, 0];

const sampleOf = (definition: ParticularDefinition): string | number | boolean | undefined => {
  const { enum: choices, minimum = Number.NEGATIVE_INFINITY, maximum } = definition;
  const listed = choices?.[Math.floor((choices.length - 1) / 2)];
  if (listed !== undefined) return listed;
  switch (particularKind(definition)) {
    case "boolean":
      return true;
    case "string":
    case "date":
      return undefined;
    case "number": {
      const fits = (figure: number) => figure >= minimum && figure <= (maximum ?? figure);
      return ROUND_FIGURES.find(fits) ?? (Number.isFinite(minimum) ? minimum : maximum);
    }
  }
};

/** Particulars to try a checklist with; a word that could be anything is left for its reader. */
export const sampleParticulars = (document: DraftDocument): Particulars =>
  Object.fromEntries(
    particularsInOrder(document.particulars ?? {}).flatMap(([name, definition]) => {
      const sample = sampleOf(definition);
      return sample === undefined ? [] : [[name, sample] as const];
    }),
  );
