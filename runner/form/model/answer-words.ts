import { type Answer, isAbsent, isReading, type WrittenText } from "@roundbook/schemas";
import { printNumber, printQuantity } from "../look/print-unit.ts";
import type { Messages } from "../messages/messages.tsx";
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

/** An answer as it stands in the margin of its point: "OK", "> 200 MΩ", "Not applicable". */
export function answerWords(
  t: Messages["t"],
  { kind, definition }: FormPoint,
  answer: Answer,
  contents?: Contents,
): string {
  if (isAbsent(answer)) return t(`absent.${answer.absent.reason}`);
  if (isReading(answer)) {
    const { value, unit, comparator } = answer;
    const own = unit === definition.quantity?.unit;
    const decimals = own ? boundDecimals(value, definition.quantity?.decimals) : undefined;
    return printQuantity(value, unit, { comparator, decimals });
  }
  if (typeof answer === "number") return printNumber(answer);
  if (typeof answer === "string") {
    if (kind === "check") return t(answer === "ok" ? "answer.ok" : "answer.not-ok");
    if (kind === "choice")
      return choicesOf(definition).find(({ value }) => value === answer)?.title ?? answer;
    return answer;
  }
  if (Array.isArray(answer)) return t("answer.photos", { count: answer.length });
  return writtenWords(t, answer as WrittenText, contents);
}

/** The note beside an absence, if one was written. */
export function absenceNote(
  t: Messages["t"],
  answer: Answer | undefined,
  contents?: Contents,
): string | undefined {
  if (!isAbsent(answer) || answer.absent.note === undefined) return undefined;
  return writtenWords(t, answer.absent.note, contents);
}
