import { CheckList } from "../look/check-list.tsx";
import { WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { wordsIn } from "../model/answer-parts.ts";
import { choicesOf } from "../model/choices.ts";
import type { FieldProps } from "./field.ts";
import { OtherAnswer } from "./other-answer.tsx";

/** Any of several options. None at all is no answer: a sheet nobody ticked says nothing. */
export function ChoicesField({ point, answer, onAnswer, onAbsent }: FieldProps) {
  const { t } = useMessages();
  const chosen = wordsIn(answer);
  const options = choicesOf(point.definition).map(({ value, title }) => ({ value, label: title }));
  const onCheck = (value: string, checked: boolean) => {
    // Kept in the order the checklist gives, so that the same ticks are the same answer.
    const next = options
      .map((option) => option.value)
      .filter((one) => (one === value ? checked : chosen.includes(one)));
    onAnswer(next.length > 0 ? next : undefined);
  };
  return (
    <>
      <p className="second">{t("choices.about")}</p>
      <CheckList label={point.title} options={options} checked={chosen} onCheck={onCheck} />
      <WordList>
        <OtherAnswer answer={answer} onAbsent={onAbsent} />
      </WordList>
    </>
  );
}
