import { isAbsent } from "@roundbook/schemas";
import { AnswerStrip } from "../look/answer-strip.tsx";
import { WordButton } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { gradesOf } from "../model/choices.ts";
import type { FieldProps } from "./field.ts";

export function GradedField({ point, answer, onAnswer, onAbsent }: FieldProps) {
  const { t } = useMessages();
  const options = gradesOf(point.definition).map((grade) => ({
    value: String(grade),
    label: String(grade),
  }));
  return (
    <>
      <AnswerStrip
        label={point.title}
        options={options}
        chosen={typeof answer === "number" ? String(answer) : null}
        onChoose={(value) => onAnswer(Number(value))}
      />
      <WordButton aria-pressed={isAbsent(answer)} onClick={onAbsent}>
        {t("answer.other")}
      </WordButton>
    </>
  );
}
