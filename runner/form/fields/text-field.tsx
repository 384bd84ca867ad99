import { AreaField } from "../look/line-field.tsx";
import { WordButton } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import type { FieldProps } from "./field.ts";

export function TextField({ point, answer, onAnswer, onAbsent }: FieldProps) {
  const { t } = useMessages();
  return (
    <>
      <AreaField
        label={t("text.label")}
        aria-label={point.title}
        value={typeof answer === "string" ? answer : ""}
        maxLength={point.definition.maxLength ?? 4000}
        onChange={({ target }) => onAnswer(target.value === "" ? undefined : target.value)}
      />
      <WordButton onClick={onAbsent}>{t("answer.other")}</WordButton>
    </>
  );
}
