import type { Answer, QuantityDefinition, Reading } from "@roundbook/schemas";
import { readingsOf } from "../model/answer-parts.ts";
import { isUnusual } from "../model/plausible.ts";
import { parseReading, readingText } from "../model/reading-text.ts";
import type { FormPoint } from "../model/sections.ts";
import { secondsAt } from "../model/wait.ts";
import type { Box, Draft, FieldProps, Step } from "./field.ts";

/** A reading point whose checklist is still a draft may lack its quantity: it then counts in "1". */
export const quantityOf = ({ definition }: FormPoint): QuantityDefinition =>
  definition.quantity ?? { unit: "1" };

const emptyBox = (unit: string): Box => ({ text: "", unit, asked: false, sure: false });

const boxOfReading = (reading: Reading): Box => ({
  text: readingText(reading),
  unit: reading.unit,
  asked: false,
  sure: true,
  ...(reading.elapsed !== undefined && { elapsed: reading.elapsed }),
});

/** What stands in the boxes when a point opens: the answer given before, or nothing. */
export function openingDraft(point: FormPoint, answer: Answer | undefined): Draft {
  const { unit } = quantityOf(point);
  const given =
    point.kind === "count" && typeof answer === "number"
      ? [{ value: answer, unit }]
      : readingsOf(answer);
  const boxes = given.map(boxOfReading);
  if (point.kind === "readings") return { boxes, at: boxes.length };
  return { boxes: boxes.length > 0 ? boxes : [emptyBox(unit)], at: 0 };
}

/** The box at a place; one that was never written in is empty, in the unit of the one before. */
export const boxAt = (point: FormPoint, { boxes }: Draft, at: number): Box =>
  boxes[at] ?? emptyBox(boxes.at(-1)?.unit ?? quantityOf(point).unit);

export const currentBox = (point: FormPoint, draft: Draft): Box => boxAt(point, draft, draft.at);

const withBox = (point: FormPoint, draft: Draft, box: Box): Draft => {
  const count = Math.max(draft.boxes.length, draft.at + 1);
  return {
    ...draft,
    boxes: Array.from({ length: count }, (_, at) =>
      at === draft.at ? box : boxAt(point, draft, at),
    ),
  };
};

/** The person says that an unusual reading is right. */
export const keepAsIs = (point: FormPoint, draft: Draft): Draft =>
  withBox(point, draft, { ...currentBox(point, draft), sure: true });

/** The reading a box amounts to; `undefined` while it is not a number, so that it never counts. */
export function readingOf({ text, unit, elapsed }: Box): Reading | undefined {
  const written = parseReading(text);
  return written && { ...written, unit, ...(elapsed !== undefined && { elapsed }) };
}

function answerOf(point: FormPoint, { boxes }: Draft): Answer | undefined {
  const readings = boxes.flatMap((box) => readingOf(box) ?? []);
  if (point.kind === "readings") return readings.length > 0 ? readings : undefined;
  return readings[0];
}

/**
 * Writing is answering: each stroke replaces the answer, and an unreadable one clears it. The first
 * stroke after a wait is the moment of the reading, unless the person said when it was.
 */
export function write(
  props: Pick<FieldProps, "point" | "draft" | "onDraft" | "onAnswer" | "wait" | "onWait" | "now">,
  change: Partial<Pick<Box, "text" | "unit">>,
) {
  const { point, wait } = props;
  const before = currentBox(point, props.draft);
  const readAt = wait?.readAt ?? props.now();
  const kept = before.text === "" ? undefined : before.elapsed;
  const elapsed = kept ?? (wait && secondsAt(wait, readAt));
  const box: Box = {
    text: change.text ?? before.text,
    unit: change.unit ?? before.unit,
    asked: false,
    sure: false,
    ...(elapsed !== undefined && { elapsed }),
  };
  if (wait && wait.readAt === undefined && kept === undefined) {
    props.onWait({ ...wait, readAt });
  }
  const draft = withBox(point, props.draft, box);
  props.onDraft(draft);
  props.onAnswer(answerOf(point, draft));
}

/** Takes back what stands in the current box: a wait that starts again is for another reading. */
export function eraseBox({
  point,
  draft,
  onDraft,
  onAnswer,
}: Pick<FieldProps, "point" | "draft" | "onDraft" | "onAnswer">) {
  const { text, unit } = currentBox(point, draft);
  if (text === "") return;
  const erased = withBox(point, draft, emptyBox(unit));
  onDraft(erased);
  onAnswer(answerOf(point, erased));
}

/** The unit after this one among those the point takes, or `undefined` when there is only one. */
export function otherUnit(point: FormPoint, unit: string): string | undefined {
  const { unit: own, alsoIn = [] } = quantityOf(point);
  const units = [own, ...alsoIn.filter((code) => code !== own)];
  if (units.length < 2) return undefined;
  return units[(units.indexOf(unit) + 1) % units.length];
}

/** An unusual reading holds the person up until it was confirmed. */
export function isDoubtful(point: FormPoint, box: Box): boolean {
  const reading = readingOf(box);
  return reading !== undefined && !box.sure && isUnusual(reading, quantityOf(point));
}

/**
 * Asked at once when further digits cannot bring the reading back (it lies beyond its highest usual
 * value), else only when the person goes on: the first digit of 50 is no 5.
 */
export function asksNow(point: FormPoint, box: Box): boolean {
  if (!isDoubtful(point, box)) return false;
  const { plausible, ...quantity } = quantityOf(point);
  const reading = readingOf(box);
  const beyond =
    reading !== undefined &&
    reading.value > 0 &&
    isUnusual(reading, { ...quantity, plausible: { max: plausible?.max } });
  return box.asked || beyond;
}

/** Asks about an unusual reading, else goes to the next box that is empty. */
export function stepOf({
  point,
  draft,
  expected,
}: Pick<FieldProps, "point" | "draft" | "expected">): Step | undefined {
  const box = currentBox(point, draft);
  if (isDoubtful(point, box)) return { draft: withBox(point, draft, { ...box, asked: true }) };
  if (point.kind !== "readings" || readingOf(box) === undefined) return undefined;
  const count = expected ?? draft.boxes.length + 1;
  const empty = Array.from({ length: count }, (_, at) => at).find(
    (at) => readingOf(boxAt(point, draft, at)) === undefined,
  );
  return empty === undefined ? undefined : { draft: { ...draft, at: empty }, to: empty + 1 };
}
