import type { Answer as GivenAnswer, PointJudgement, PointKind } from "@roundbook/schemas";
import { Answer } from "./look/point.tsx";
import { Verdict } from "./look/verdict.tsx";
import { useMessages } from "./messages/messages.tsx";
import { answerWords, type Contents, valueWords } from "./model/answer-words.ts";
import type { FormPoint } from "./model/sections.ts";

export interface PointAnswerProps {
  readonly point: FormPoint;
  readonly answer: GivenAnswer | undefined;
  readonly judgement: PointJudgement | undefined;
  readonly declared: boolean;
  /** The open point shows its answer in its field, and its verdict changes in place. */
  readonly open: boolean;
  /** A sealed inspection shows every verdict; on the round a plain pass is its answer. */
  readonly sealed?: boolean;
  readonly contents?: Contents;
}

/** Kinds whose pass says how good a figure is, so that it is shown too. */
const MEASURED: ReadonlySet<PointKind> = new Set([
  "reading",
  "readings",
  "graded",
  "count",
  "date",
  "sample",
]);

/** What stands at the right of a point. Without an answer no verdict is shown, least of all a pass. */
export function PointAnswer({
  point,
  answer,
  judgement,
  declared,
  open,
  sealed = false,
  contents,
}: PointAnswerProps) {
  const { t } = useMessages();
  const verdict = judgement?.verdict ?? null;
  if (point.kind === "calculated") return <WorkedOut {...{ point, judgement, open }} />;
  if (answer === undefined)
    return open ? null : <span className="answer-none">{t("answer.none")}</span>;
  const measured = MEASURED.has(point.kind);
  const shown =
    verdict !== null &&
    verdict !== "not-counted" &&
    (open || sealed || measured || verdict !== "pass");
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

/** A value nobody wrote, so in ink; without one nothing is shown as judged. */
function WorkedOut({
  point,
  judgement,
  open,
}: Pick<PointAnswerProps, "point" | "judgement" | "open">) {
  const { t } = useMessages();
  const value = judgement?.value;
  if (value === undefined)
    return open ? null : <span className="answer-none">{t("calculated.none")}</span>;
  const verdict = judgement?.verdict ?? null;
  return (
    <>
      {!open && <strong>{valueWords(point, value)}</strong>}
      {verdict !== null && verdict !== "not-counted" && (
        <Verdict verdict={verdict} word={t(`verdict.${verdict}`)} live={open} />
      )}
    </>
  );
}
