import {
  type Checklist,
  type Judge,
  type LimitJudgement,
  type Particulars,
  worded,
} from "@roundbook/schemas";
import { type ReactNode, useMemo } from "react";
import { askedOf } from "./asked-of.ts";
import { LimitWords } from "./fields/limit-words.tsx";
import { LeafWords } from "./look/margin-block.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Point } from "./look/point.tsx";
import { printUnit } from "./look/print-unit.ts";
import { useMessages } from "./messages/messages.tsx";
import { ChecklistTitles } from "./messages/titled.tsx";
import { choicesOf, gradesOf } from "./model/choices.ts";
import { type FormPoint, sectionsOf, unknownRepeats } from "./model/sections.ts";

export interface BlankSheetProps {
  readonly document: Checklist;
  readonly judge: Judge;
  /** Of the asset it is printed for; limits that hang on what is not known are left to be worked out. */
  readonly particulars: Particulars;
  readonly language?: string;
}

/** A checklist on paper: every point with room for its answer, its limits and their basis. */
export function BlankSheet({ document: data, judge, particulars, language }: BlankSheetProps) {
  const { t } = useMessages();
  const document = useMemo(
    () => (language === undefined ? data : worded(data, language)),
    [data, language],
  );
  const input = useMemo(() => ({ particulars, answers: {} }), [particulars]);
  const judgement = useMemo(() => judge.judge(input), [judge, input]);
  const sections = useMemo(
    () => sectionsOf(document, t("form.points"), judgement.repeats),
    [document, t, judgement],
  );
  return (
    <ChecklistTitles value={document}>
      {(document.cautions ?? []).length > 0 && (
        <section className="blank-cautions">
          <PlaceHeading title={t("caution.title")} />
          <LeafWords>
            <ul className="cautions">
              {document.cautions?.map((caution) => (
                <li key={caution}>{caution}</li>
              ))}
            </ul>
          </LeafWords>
        </section>
      )}
      {sections.map(({ key, number, title, under, points }) => (
        <section key={key} className="blank-section">
          <PlaceHeading number={number} title={title} aside={under ?? undefined} />
          {points.map((point) => {
            const judged = judgement.points[point.id];
            const { limits } = askedOf(point, judge, judgement, input);
            const known = ({ bound, boundDate, kind }: LimitJudgement) =>
              bound !== null || boundDate !== undefined || kind === "accept";
            const hangs = hasBounds(point) && !limits.some(known);
            return (
              <div key={point.id} className="blank-point">
                <Point
                  number={point.number}
                  question={point.title}
                  help={point.definition.description}
                />
                <div className="blank-body">
                  <Room point={point} />
                  {judged && (
                    <LimitWords
                      quantity={point.definition.quantity}
                      judgement={judged}
                      limits={limits}
                      all
                      silent
                    />
                  )}
                  {hangs && <p className="second">{t("blank.limit")}</p>}
                </div>
              </div>
            );
          })}
        </section>
      ))}
      {unknownRepeats(document, judgement.repeats).map(({ title }) => (
        <section key={title} className="blank-section">
          <PlaceHeading title={title} />
          <LeafWords>
            <p className="second">{t("blank.repeat")}</p>
          </LeafWords>
        </section>
      ))}
    </ChecklistTitles>
  );
}

/** A reading's limits hang on particulars that are not known. */
const hasBounds = ({ definition, kind }: FormPoint): boolean =>
  (kind === "reading" || kind === "readings" || kind === "count" || kind === "date") &&
  (definition.limits ?? []).length > 0;

const Boxes = ({ labels }: { readonly labels: readonly string[] }) => (
  <ul className="blank-boxes">
    {labels.map((label) => (
      <li key={label}>
        <span className="blank-box" aria-hidden="true" /> {label}
      </li>
    ))}
  </ul>
);

const Line = ({ label, short }: { readonly label?: ReactNode; readonly short?: boolean }) => (
  <p className={short ? "blank-line blank-short" : "blank-line"}>
    <span className="blank-rule" aria-hidden="true" /> {label}
  </p>
);

/** Where the answer of one point is written. */
function Room({ point }: { readonly point: FormPoint }) {
  const { t } = useMessages();
  const { definition, kind } = point;
  const absences = (definition.ask?.absentAllowed ?? []).map((reason) => t(`absent.${reason}`));
  const unit = definition.quantity ? printUnit(definition.quantity.unit) : "";
  const { wait } = definition.ask ?? {};
  const waited = wait?.atLeast !== undefined && (
    <Line short label={t("blank.waited", { seconds: wait.atLeast })} />
  );
  switch (kind) {
    case "check":
      return <Boxes labels={[t("answer.ok"), t("answer.not-ok"), ...absences]} />;
    case "choice":
    case "choices":
      return <Boxes labels={[...choicesOf(definition).map(({ title }) => title), ...absences]} />;
    case "graded":
      return <Boxes labels={[...gradesOf(definition).map(String), ...absences]} />;
    case "reading":
    case "count":
      return (
        <>
          <Line short label={unit} />
          {waited}
          <Boxes labels={absences} />
        </>
      );
    case "readings": {
      const count = typeof definition.several?.count === "number" ? definition.several.count : 3;
      return (
        <>
          {Array.from({ length: count }, (_, at) => (
            <Line key={at} short label={unit} />
          ))}
          {waited}
          <Boxes labels={absences} />
        </>
      );
    }
    case "date":
      return <Line short label={t("blank.date")} />;
    case "sample":
      return <Line label={t("blank.sample")} />;
    case "photo":
      return <p className="second">{t("blank.photo")}</p>;
    case "calculated":
      return <p className="second">{t("blank.calculated")}</p>;
    case "text":
    case "signature":
      return <Line />;
  }
}
