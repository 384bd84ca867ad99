import {
  type Answer,
  isAbsent,
  isSample,
  type Reading,
  type WrittenText,
} from "@roundbook/schemas";
import { printNumber, printQuantity } from "../look/print-unit.ts";
import { dateWords } from "../messages/dates.ts";
import type { Messages } from "../messages/messages.tsx";
import { isSignature, readingsOf, wordsIn } from "./answer-parts.ts";
import { choicesOf } from "./choices.ts";
import { boundDecimals } from "./limit-drawing.ts";
import type { FormPoint } from "./sections.ts";

/** Texts that still stand beside the log, by commitment. */
export type Contents = Readonly<Record<string, string>>;

/** A text, or what stands for one that was erased. */
export const writtenWords = (
  t: Messages["t"],
  text: WrittenText,
  contents: Contents = {},
): string => (typeof text === "string" ? text : (contents[text.commit] ?? t("answer.erased")));

/** A reading as it was taken, in its own unit: "> 200 MΩ". */
export function readingWords({ definition }: FormPoint, reading: Reading): string {
  const { value, unit, comparator } = reading;
  const own = unit === definition.quantity?.unit;
  const decimals = own ? boundDecimals(value, definition.quantity?.decimals) : undefined;
  return printQuantity(value, unit, { comparator, decimals });
}

/** A value that was worked out, in the point's own unit: a third is not printed to its end. */
export function valueWords({ definition: { quantity } }: FormPoint, value: number): string {
  const figures = value === 0 ? 0 : 3 - Math.floor(Math.log10(Math.abs(value)));
  const most = Math.max((quantity?.decimals ?? 0) + 2, figures);
  const decimals = Math.min(boundDecimals(value, quantity?.decimals), most);
  return printQuantity(value, quantity?.unit, { decimals });
}

const optionWords = ({ definition }: FormPoint, answer: string): string =>
  choicesOf(definition).find(({ value }) => value === answer)?.title ?? answer;

/** An answer as it stands in the margin of its point: "OK", "> 200 MΩ", "Not applicable". */
export function answerWords(
  t: Messages["t"],
  point: FormPoint,
  answer: Answer,
  contents?: Contents,
): string {
  if (isAbsent(answer)) return t(`absent.${answer.absent.reason}`);
  if (isSample(answer)) {
    return answer.result === undefined
      ? t("sample.awaited", { sample: answer.sample })
      : `${answer.sample}: ${readingWords(point, answer.result)}`;
  }
  if (isSignature(answer)) return writtenWords(t, answer.signedBy, contents);
  const readings = readingsOf(answer);
  if (readings.length > 0) return readings.map((one) => readingWords(point, one)).join(", ");
  if (typeof answer === "number") return printNumber(answer);
  if (Array.isArray(answer)) {
    if (point.kind === "photo") return t("answer.photos", { count: answer.length });
    return wordsIn(answer)
      .map((one) => optionWords(point, one))
      .join(", ");
  }
  if (typeof answer !== "string") return writtenWords(t, answer as WrittenText, contents);
  switch (point.kind) {
    case "check":
      return t(answer === "ok" ? "answer.ok" : "answer.not-ok");
    case "choice":
      return optionWords(point, answer);
    case "date":
      return dateWords(answer);
    default:
      return answer;
  }
}

/** Characters beside which a question still has its room on a phone; a verdict takes some too. */
const BESIDE = { judged: 12, plain: 26 } as const;
const IN_PARTS: ReadonlySet<string> = new Set(["choices", "date", "readings", "sample"]);

/** An answer that would crowd its question out, so that it stands below. */
export const isLong = (
  t: Messages["t"],
  point: FormPoint,
  answer: Answer | undefined,
  contents?: Contents,
): boolean =>
  answer !== undefined &&
  answerWords(t, point, answer, contents).length >
    (IN_PARTS.has(point.kind) ? BESIDE.judged : BESIDE.plain);

/** The note beside an absence, if one was written. */
export function absenceNote(
  t: Messages["t"],
  answer: Answer | undefined,
  contents?: Contents,
): string | undefined {
  if (!isAbsent(answer) || answer.absent.note === undefined) return undefined;
  return writtenWords(t, answer.absent.note, contents);
}
