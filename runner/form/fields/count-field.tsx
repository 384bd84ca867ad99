import { useEffect, useRef } from "react";
import { Stepper } from "../look/stepper.tsx";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { takeFocus } from "../take-focus.ts";
import type { FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { OtherAnswer } from "./other-answer.tsx";
import { currentBox, quantityOf } from "./reading-entry.ts";

const WHOLE = /^\d{1,9}$/;

/** How many there are. The steps begin at what was entered: nought is an answer, never a start. */
export function CountField(props: FieldProps) {
  const { point, answer, onAnswer, draft, onDraft, judgement, limits, last } = props;
  const { t } = useMessages();
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (input.current) takeFocus(input.current);
  }, []);
  const box = currentBox(point, draft);
  const count = typeof answer === "number" ? answer : undefined;
  const write = (text: string) => {
    onDraft({ at: 0, boxes: [{ ...box, text }] });
    const whole = text.trim();
    onAnswer(WHOLE.test(whole) ? Number(whole) : undefined);
  };
  const stepTo = (next: number) => () => write(String(next));
  return (
    <>
      <Stepper
        ref={input}
        label={point.title}
        value={box.text}
        onChange={({ target }) => write(target.value)}
        fewer={{
          label: t("count.fewer"),
          onPress: count === undefined || count === 0 ? undefined : stepTo(count - 1),
        }}
        more={{ label: t("count.more"), onPress: stepTo((count ?? 0) + 1) }}
      />
      {count === undefined && box.text.trim() !== "" && (
        <p className="danger">{t("count.unreadable", { text: box.text })}</p>
      )}
      <LimitPicture
        quantity={quantityOf(point)}
        judgement={judgement}
        limits={limits}
        reading={count === undefined ? undefined : { value: count, unit: quantityOf(point).unit }}
        last={last}
        fromZero
      />
      <WordList>
        <WordButton onClick={stepTo(0)}>{t("count.none")}</WordButton>
        <OtherAnswer {...props} />
      </WordList>
    </>
  );
}
