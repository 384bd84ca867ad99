import type { Answer, PointJudgement } from "@roundbook/schemas";
import { Point } from "./look/point.tsx";
import { useMessages } from "./messages/messages.tsx";
import { useTitled } from "./messages/titled.tsx";
import { answerWords, type Contents } from "./model/answer-words.ts";
import type { FormPoint } from "./model/sections.ts";

export interface StoppedPointProps {
  readonly point: FormPoint;
  readonly answer: Answer | undefined;
  readonly judgement: PointJudgement | undefined;
  readonly contents?: Contents;
}

/** A point that another's verdict stopped: struck, with what the checklist says; its answer is kept. */
export function StoppedPoint({ point, answer, judgement, contents }: StoppedPointProps) {
  const { t } = useMessages();
  const titled = useTitled();
  return (
    <Point
      id={`point-${point.id}`}
      number={point.number}
      question={point.title}
      stopped
      help={judgement && titled(judgement.why)}
      note={
        answer === undefined
          ? undefined
          : t("stop.kept", { answer: answerWords(t, point, answer, contents) })
      }
    />
  );
}
