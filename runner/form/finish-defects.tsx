import type { Judgement } from "@roundbook/schemas";
import { Fragment } from "react";
import { LimitWords } from "./fields/limit-words.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Point } from "./look/point.tsx";
import { WordButton } from "./look/word.tsx";
import { gradeSentence } from "./messages/grade-words.ts";
import { useMessages } from "./messages/messages.tsx";
import { answerWords } from "./model/answer-words.ts";
import { fullTitle } from "./model/full-title.ts";
import type { Section } from "./model/sections.ts";
import { PointDetails } from "./point-details.tsx";
import type { Filling } from "./use-filling.ts";

export interface FinishDefectsProps {
  readonly judgement: Judgement;
  readonly sections: readonly Section[];
  readonly filling: Filling;
  readonly openDefects: Readonly<Record<string, string>>;
  onGo(id: string): void;
}

/** The defects this inspection raises: a point each that fails, with its grade. */
export function FinishDefects({
  judgement,
  sections,
  filling,
  openDefects,
  onGo,
}: FinishDefectsProps) {
  const { t } = useMessages();
  const failed = sections
    .flatMap(({ points }) => points)
    .filter(({ id }) => judgement.points[id]?.verdict === "fail");
  if (failed.length === 0) return null;
  return (
    <>
      <PlaceHeading title={t("finish.defects")} aside={String(failed.length)} />
      {failed.map((point) => {
        const judged = judgement.points[point.id];
        const answer = filling.filled.answers[point.id];
        const photos = (filling.filled.evidence[point.id] ?? []).filter(
          ({ kind }) => kind === "photo",
        ).length;
        return (
          <Fragment key={point.id}>
            <Point
              number={point.number}
              question={
                <strong>
                  {fullTitle(t, point)}
                  {answer !== undefined &&
                    `${point.title.endsWith("?") ? " " : ": "}${answerWords(t, point, answer)}`}
                </strong>
              }
              answer={<WordButton onClick={() => onGo(point.id)}>{t("answer.change")}</WordButton>}
            />
            <PointDetails>
              <p className={point.definition.grade?.means === "danger-now" ? "danger" : undefined}>
                {point.definition.grade && gradeSentence(t, point.definition.grade)}
              </p>
              {judged && point.kind !== "check" && (
                <LimitWords
                  quantity={point.definition.quantity}
                  judgement={judged}
                  limits={judged.limits}
                />
              )}
              <p className="second">
                {openDefects[point.id] ?? t("finish.new-defect")}
                {photos > 0 && ` ${t("answer.photos", { count: photos })}.`}
              </p>
            </PointDetails>
          </Fragment>
        );
      })}
    </>
  );
}
