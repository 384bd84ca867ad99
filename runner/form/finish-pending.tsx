import type { Judgement } from "@roundbook/schemas";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Answer, Point } from "./look/point.tsx";
import { WordButton } from "./look/word.tsx";
import { useMessages } from "./messages/messages.tsx";
import { answerWords } from "./model/answer-words.ts";
import { fullTitle } from "./model/full-title.ts";
import type { Section } from "./model/sections.ts";
import type { Filling } from "./use-filling.ts";

/** Samples whose result is awaited: the check can be signed, and stays undecided until they come. */
export function FinishPending({
  judgement,
  sections,
  filling,
  onGo,
}: {
  readonly judgement: Judgement;
  readonly sections: readonly Section[];
  readonly filling: Filling;
  onGo(id: string): void;
}) {
  const { t } = useMessages();
  const pending = sections
    .flatMap(({ points }) => points)
    .filter(({ id }) => judgement.pending.includes(id));
  if (pending.length === 0) return null;
  return (
    <>
      <PlaceHeading title={t("pending.title")} aside={String(pending.length)} />
      {pending.map((point) => {
        const answer = filling.filled.answers[point.id];
        return (
          <Point
            key={point.id}
            number={point.number}
            question={fullTitle(t, point)}
            help={answer && <Answer>{answerWords(t, point, answer)}</Answer>}
            answer={<WordButton onClick={() => onGo(point.id)}>{t("answer.change")}</WordButton>}
          />
        );
      })}
    </>
  );
}
