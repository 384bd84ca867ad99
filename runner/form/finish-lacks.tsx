import type { Checklist, Explanation, Judgement } from "@roundbook/schemas";
import { Fragment } from "react";
import { LeafWords } from "./look/margin-block.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Point } from "./look/point.tsx";
import { WordButton, WordList } from "./look/word.tsx";
import { type Messages, useMessages } from "./messages/messages.tsx";
import { useTitled } from "./messages/titled.tsx";
import { fullTitle } from "./model/full-title.ts";
import { type Lack, lacksOf } from "./model/lacking.ts";
import { type FormPoint, type Section, unknownRepeats } from "./model/sections.ts";
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

/** Pending samples have a heading of their own; what is not asked takes nobody anything to do. */
const DONE: ReadonlySet<string> = new Set(["result-awaited", "operand-not-asked"]);

/** What is still to do, each with a way there; an unanswered point may be declared not checked. */
export function FinishLacks({ document, judgement, filling, sections, onGo }: FinishLacksProps) {
  const { t } = useMessages();
  const titled = useTitled();
  const { answers, evidence, told } = lacksOf(document, judgement);
  const points = new Map(
    sections.flatMap((section) => section.points.map((point) => [point.id, point])),
  );
  const lacks = [...answers, ...evidence, ...told].filter(({ problem }) => !DONE.has(problem.code));
  const all = [...points.keys()].flatMap((id) => {
    const [first, ...more] = lacks.filter(({ point }) => point === id);
    return first ? [[first, ...more] as const] : [];
  });
  if (isUntouched(filling.filled.answers) && all.length === 0) {
    return (
      <LeafWords>
        <p>{t("finish.nothing")}</p>
      </LeafWords>
    );
  }
  const unknown = unknownRepeats(document, judgement.repeats);
  const count = all.length + unknown.length;
  if (count === 0) return null;
  return (
    <>
      <PlaceHeading title={t("finish.lacking")} aside={String(count)} />
      {unknown.map(({ title, why }) => (
        <Point key={title} number="" question={title} help={repeatWords({ t, say: titled }, why)} />
      ))}
      {all.map((lacking) => {
        const point = points.get(lacking[0].point);
        return (
          point && (
            <Fragment key={point.id}>
              <Point
                number={point.number}
                question={fullTitle(t, point)}
                help={lacking.map(({ problem }) => titled(problem)).join(" ")}
              />
              <PointDetails>
                <Ways {...{ point, filling, onGo }} lacks={lacking} />
              </PointDetails>
            </Fragment>
          )
        );
      })}
    </>
  );
}

function Ways({
  lacks,
  point,
  filling,
  onGo,
}: {
  readonly lacks: readonly Lack[];
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
      {lacks.some(({ problem }) => problem.code === "mandatory-not-answered") && (
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

/** Why the members of a repeat are not known, and where what is missing is to be given. */
function repeatWords(
  { t, say }: { readonly t: Messages["t"]; say(what: Explanation): string },
  why: Explanation,
): string {
  const { name } = why.params;
  const ofAsset = why.code === "missing" && typeof name === "string" && name.startsWith("asset.");
  return `${t("repeat.unknown")} ${say(ofAsset ? { ...why, code: "repeat.particular" } : why)}`;
}
