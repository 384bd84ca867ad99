import { LineField } from "../look/line-field.tsx";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import type { FieldProps } from "./field.ts";
import { LimitWords } from "./limit-words.tsx";
import { OtherAnswer } from "./other-answer.tsx";

/** A civil date, with its limits in words. Today is offered, never filled in. */
export function DateField(props: FieldProps) {
  const { point, answer, onAnswer, judgement, limits, on } = props;
  const { t } = useMessages();
  return (
    <>
      <LineField
        label={t("date.label")}
        aria-label={point.title}
        type="date"
        data-empty={typeof answer !== "string"}
        value={typeof answer === "string" ? answer : ""}
        onChange={({ target }) => onAnswer(target.value === "" ? undefined : target.value)}
      />
      <WordList>
        <WordButton onClick={() => onAnswer(on)}>{t("date.today")}</WordButton>
        <OtherAnswer {...props} />
      </WordList>
      {judgement && <LimitWords quantity={undefined} judgement={judgement} limits={limits} all />}
    </>
  );
}
