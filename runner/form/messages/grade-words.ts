import type { GradeDefinition } from "@roundbook/schemas";
import { durationWords } from "./duration-words.ts";
import type { Messages } from "./messages.tsx";

/** "This is a danger now." What a failure of a point means. */
export function gradeSentence(t: Messages["t"], { means, within }: GradeDefinition): string {
  return means === "by-a-date" && within !== undefined
    ? t("grade.by-a-date-within", { within: durationWords(t, within) })
    : t(`grade.${means}`);
}
