import type { Checklist, Judgement } from "@roundbook/schemas";
import { Fragment } from "react";
import { LeafWords } from "./look/margin-block.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Point } from "./look/point.tsx";
import { WordButton, WordList } from "./look/word.tsx";
import { useMessages } from "./messages/messages.tsx";
import { type Lack, lacksOf } from "./model/lacking.ts";
import type { FormPoint, Section } from "./model/sections.ts";
import { isUntouched } from "./model/untouched.ts";
import { PointDetails } from "./point-details.tsx";
import type { Filling } from "./use-filling.ts";

export interface FinishLacksProps {
  readonly document: Checklist;
  readonly judgement: Judgement;
  readonly filling: Filling;
  readonly sections: readonly Section[];
  onGo(id: string): void;
}

/** What is still to do, each with a way there; an unanswered point may be declared not checked. */
export function FinishLacks({ document, judgement, filling, sections, onGo }: FinishLacksProps) {
  const { t, say } = useMessages();
  const { answers, evidence, told } = lacksOf(document, judgement);
  const points = new Map(
    sections.flatMap((section) => section.points.map((point) => [point.id, point])),
  );
  const all = [...answers, ...evidence, ...told];
  if (isUntouched(filling.filled.answers) && all.length === 0) {
    return (
      <LeafWords>
        <p>{t("finish.nothing")}</p>
      </LeafWords>
    );
  }
  if (all.length === 0) return null;
  return (
    <>
      <PlaceHeading title={t("finish.lacking")} aside={String(all.length)} />
      {all.map((lack) => {
        const point = points.get(lack.point);
        return (
          point && (
            <Fragment
              key={`${lack.point} ${lack.problem.code} ${String(lack.problem.params.kind ?? "")}`}
            >
              <Point
                number={point.number}
                question={point.definition.title}
                help={say(lack.problem)}
              />
              <PointDetails>
                <Ways {...{ lack, point, filling, onGo }} />
              </PointDetails>
            </Fragment>
          )
        );
      })}
    </>
  );
}

function Ways({
  lack,
  point,
  filling,
  onGo,
}: {
  readonly lack: Lack;
  readonly point: FormPoint;
  readonly filling: Filling;
  onGo(id: string): void;
}) {
  const { t } = useMessages();
  return (
    <WordList>
      <WordButton onClick={() => onGo(point.id)} aria-label={`${t("finish.go")}: ${point.number}`}>
        {t("finish.go")}
      </WordButton>
      {lack.problem.code === "mandatory-not-answered" && (
        <WordButton
          quiet
          onClick={() => filling.setAnswer(point.id, { absent: { reason: "not-checked" } })}
          aria-label={`${t("finish.not-checked")}: ${point.number}`}
        >
          {t("finish.not-checked")}
        </WordButton>
      )}
    </WordList>
  );
}
