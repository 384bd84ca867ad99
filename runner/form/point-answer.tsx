import type { Answer as GivenAnswer, PointJudgement } from "@roundbook/schemas";
import { Answer } from "./look/point.tsx";
import { Verdict } from "./look/verdict.tsx";
import { useMessages } from "./messages/messages.tsx";
import { answerWords, type Contents } from "./model/answer-words.ts";
import type { FormPoint } from "./model/sections.ts";

export interface PointAnswerProps {
  readonly point: FormPoint;
  readonly answer: GivenAnswer | undefined;
  readonly judgement: PointJudgement | undefined;
  readonly declared: boolean;
  /** The open point shows its answer in its field, and its verdict changes in place. */
  readonly open: boolean;
  readonly contents?: Contents;
}

/** What stands at the right of a point. Without an answer no verdict is shown, least of all a pass. */
export function PointAnswer({
  point,
  answer,
  judgement,
  declared,
  open,
  contents,
}: PointAnswerProps) {
  const { t } = useMessages();
  if (answer === undefined)
    return open ? null : <span className="answer-none">{t("answer.none")}</span>;
  const verdict = judgement?.verdict ?? null;
  const measured = point.kind === "reading" || point.kind === "graded";
  const shown =
    verdict !== null && verdict !== "not-counted" && (open || measured || verdict !== "pass");
  return (
    <>
      {!open && (
        <Answer ditto={declared ? t("inspection.declared") : undefined}>
          {answerWords(t, point, answer, contents)}
        </Answer>
      )}
      {shown && <Verdict verdict={verdict} word={t(`verdict.${verdict}`)} live={open} />}
    </>
  );
}
