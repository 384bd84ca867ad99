import type { Answer } from "@roundbook/schemas";
import { isSample } from "@roundbook/schemas";
import { instantWords } from "../messages/instant-words.ts";
import type { Messages } from "../messages/messages.tsx";
import { readingsOf } from "./answer-parts.ts";
import { clockFigures } from "./wait.ts";

/** When an answer was taken, as far as it says: after which wait, or the instant of a sample. */
export function momentWords(t: Messages["t"], answer: Answer | undefined): string | undefined {
  if (isSample(answer)) {
    return answer.takenAt === undefined
      ? undefined
      : t("sample.taken", { at: instantWords(answer.takenAt) });
  }
  const waited = readingsOf(answer).flatMap(({ elapsed }) =>
    elapsed === undefined ? [] : [clockFigures(elapsed)],
  );
  return waited.length > 0 ? t("wait.was", { seconds: waited.join(", ") }) : undefined;
}
