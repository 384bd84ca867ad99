import type { Checklist, Judgement } from "@roundbook/schemas";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Point } from "./look/point.tsx";
import { printNumber } from "./look/print-unit.ts";
import { Verdict } from "./look/verdict.tsx";
import { durationWords } from "./messages/duration-words.ts";
import { useMessages } from "./messages/messages.tsx";
import { useTitled } from "./messages/titled.tsx";

/** Each score with its band and what it says about the next inspection. */
export function Scores({
  document,
  judgement,
}: {
  readonly document: Checklist;
  readonly judgement: Judgement;
}) {
  const { t } = useMessages();
  const titled = useTitled();
  const scores = Object.entries(judgement.scores);
  if (scores.length === 0) return null;
  return (
    <>
      <PlaceHeading title={t("finish.scores")} />
      {scores.map(([name, { score, band, verdict, next, why }]) => (
        <Point
          key={name}
          number=""
          question={document.scores?.[name]?.title ?? name}
          help={
            score === null
              ? titled(why)
              : [band, next && t("score.next", { next: durationWords(t, next) })]
                  .filter(Boolean)
                  .join(". ")
          }
          answer={
            <>
              {score !== null && <strong>{printNumber(score)}</strong>}
              {verdict !== null && <Verdict verdict={verdict} word={t(`verdict.${verdict}`)} />}
            </>
          }
        />
      ))}
    </>
  );
}
