import { isAbsent } from "@roundbook/schemas";
import { AnswerStrip } from "../look/answer-strip.tsx";
import { useMessages } from "../messages/messages.tsx";
import { choicesOf } from "../model/choices.ts";
import type { FieldProps } from "./field.ts";

/** Stands for "Other…" in the strip; no choice can be empty. */
const OTHER = "";

export function ChoiceField({ point, answer, onAnswer, onAbsent }: FieldProps) {
  const { t } = useMessages();
  const options = choicesOf(point.definition).map(({ value, title }) => ({ value, label: title }));
  const chosen = isAbsent(answer) ? OTHER : typeof answer === "string" ? answer : null;
  return (
    <AnswerStrip
      label={point.title}
      options={[...options, { value: OTHER, label: t("answer.other") }]}
      chosen={chosen}
      onChoose={(value) => (value === OTHER ? onAbsent() : onAnswer(value))}
    />
  );
}
