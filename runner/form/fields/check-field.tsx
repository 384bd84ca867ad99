import { isAbsent } from "@roundbook/schemas";
import { AnswerStrip } from "../look/answer-strip.tsx";
import { useMessages } from "../messages/messages.tsx";
import type { FieldProps } from "./field.ts";

export function CheckField({ point, answer, onAnswer, onAbsent }: FieldProps) {
  const { t } = useMessages();
  const chosen = isAbsent(answer)
    ? "other"
    : answer === "ok" || answer === "not-ok"
      ? answer
      : null;
  return (
    <AnswerStrip
      label={point.title}
      options={[
        { value: "ok", label: t("answer.ok") },
        { value: "not-ok", label: t("answer.not-ok") },
        { value: "other", label: t("answer.other") },
      ]}
      chosen={chosen}
      onChoose={(value) => (value === "other" ? onAbsent() : onAnswer(value))}
    />
  );
}
