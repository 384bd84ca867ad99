import { type Answer, isReading, type QuantityDefinition, type Reading } from "@roundbook/schemas";
import { isUnusual } from "../model/plausible.ts";
import { parseReading, readingText } from "../model/reading-text.ts";
import type { FormPoint } from "../model/sections.ts";
import type { Draft, FieldProps } from "./field.ts";

/** A reading point whose checklist is still a draft may lack its quantity: it then counts in "1". */
export const quantityOf = ({ definition }: FormPoint): QuantityDefinition =>
  definition.quantity ?? { unit: "1" };

/** What stands in the box when a point opens: the answer given before, or nothing. */
export function openingDraft(point: FormPoint, answer: Answer | undefined): Draft {
  if (isReading(answer)) {
    return { text: readingText(answer), unit: answer.unit, asked: false, sure: true };
  }
  return { text: "", unit: quantityOf(point).unit, asked: false, sure: false };
}

/** The answer a draft amounts to; `undefined` while it is not a number, so that it never counts. */
export function readingOf(draft: Draft): Reading | undefined {
  const written = parseReading(draft.text);
  return written && { ...written, unit: draft.unit };
}

/** Writing is answering: each stroke replaces the answer, and an unreadable one clears it. */
export function write(
  props: Pick<FieldProps, "draft" | "onDraft" | "onAnswer">,
  change: Partial<Draft>,
) {
  const draft: Draft = { ...props.draft, asked: false, sure: false, ...change };
  props.onDraft(draft);
  props.onAnswer(readingOf(draft));
}

/** The unit after this one among those the point takes, or `undefined` when there is only one. */
export function otherUnit(point: FormPoint, unit: string): string | undefined {
  const { unit: own, alsoIn = [] } = quantityOf(point);
  const units = [own, ...alsoIn.filter((code) => code !== own)];
  if (units.length < 2) return undefined;
  return units[(units.indexOf(unit) + 1) % units.length];
}

const unusual = (point: FormPoint, draft: Draft): boolean => {
  const reading = readingOf(draft);
  return reading !== undefined && !draft.sure && isUnusual(reading, quantityOf(point));
};

/** An unusual reading holds the person up until it was confirmed. */
export const isDoubtful = ({ point, draft }: Pick<FieldProps, "point" | "draft">): boolean =>
  unusual(point, draft);

/**
 * Asked at once when further digits cannot bring the reading back (it lies beyond its highest usual
 * value), else only when the person goes on: the first digit of 50 is no 5.
 */
export function asksNow(point: FormPoint, draft: Draft): boolean {
  if (!unusual(point, draft)) return false;
  const { plausible, ...quantity } = quantityOf(point);
  const reading = readingOf(draft);
  const beyond =
    reading !== undefined &&
    reading.value > 0 &&
    isUnusual(reading, { ...quantity, plausible: { max: plausible?.max } });
  return draft.asked || beyond;
}
