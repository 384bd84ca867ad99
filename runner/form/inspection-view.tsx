import type { Answers, Checklist, Evidence, Judgement, PointJudgement } from "@roundbook/schemas";
import { useMemo } from "react";
import type { PhotoDoor } from "./fields/field.ts";
import { LimitWords } from "./fields/limit-words.tsx";
import { Photos } from "./fields/photos.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { Point } from "./look/point.tsx";
import { printWorking } from "./look/print-unit.ts";
import { Equation } from "./look/reading-box.tsx";
import { useMessages } from "./messages/messages.tsx";
import { ChecklistTitles } from "./messages/titled.tsx";
import { picturesIn } from "./model/answer-parts.ts";
import { absenceNote, type Contents, isLong, writtenWords } from "./model/answer-words.ts";
import { momentWords } from "./model/moment-words.ts";
import { withOperandReasons } from "./model/operand-reasons.ts";
import { type FormPoint, type Repeats, sectionsOf } from "./model/sections.ts";
import { isStopped } from "./model/walk.ts";
import { OverallLine } from "./overall-line.tsx";
import { PointAnswer } from "./point-answer.tsx";
import { PointDetails } from "./point-details.tsx";
import { Scores } from "./scores.tsx";
import { StoppedPoint } from "./stopped-point.tsx";

export interface InspectionViewProps {
  /** The very document the inspection names by its hash: its wording is printed, not today's. */
  readonly document: Checklist;
  readonly issue?: number;
  readonly answers: Answers;
  readonly evidence?: Evidence;
  readonly declared?: readonly string[];
  /** As stored: its limits are the ones that applied then. */
  readonly judgement: Judgement;
  readonly contents?: Contents;
  readonly photoUrl: PhotoDoor["photoUrl"];
}

const NO_REPEATS: Repeats = {};

/** A sealed inspection, read only. Nothing is judged again here. */
export function InspectionView(sealed: InspectionViewProps) {
  const props = { ...sealed, judgement: withOperandReasons(sealed.judgement, sealed.answers) };
  const { document, issue, judgement } = props;
  const { t } = useMessages();
  // A judgement sealed before there were repeats has none.
  const repeats = (judgement as Partial<Judgement>).repeats ?? NO_REPEATS;
  const sections = useMemo(
    () => sectionsOf(document, t("form.points"), repeats),
    [document, t, repeats],
  );
  return (
    <ChecklistTitles value={document}>
      <OverallLine document={document} issue={issue} judgement={judgement} />
      <Scores document={document} judgement={judgement} />
      {sections.map((section) => (
        <div key={section.key}>
          <PlaceHeading
            number={section.number}
            title={section.title}
            aside={section.under ?? undefined}
          />
          {section.points.map((point) => (
            <SealedPoint key={point.id} {...props} point={point} />
          ))}
        </div>
      ))}
    </ChecklistTitles>
  );
}

function SealedPoint({
  point,
  answers,
  evidence = {},
  declared = [],
  judgement,
  contents,
  photoUrl,
}: InspectionViewProps & { readonly point: FormPoint }) {
  const { t } = useMessages();
  const answer = answers[point.id];
  // A point the stored judgement does not know was not judged, whatever its document says.
  const judged: PointJudgement | undefined = judgement.points[point.id];
  const items = evidence[point.id] ?? [];
  const drawing = point.kind === "signature" ? picturesIn(point.kind, answer) : [];
  const hashes = [
    ...(point.kind === "photo" ? picturesIn(point.kind, answer) : []),
    ...items.flatMap(({ sha256 }) => (sha256 === undefined ? [] : [sha256])),
  ];
  const notes = items.flatMap(({ note }) =>
    note === undefined ? [] : [writtenWords(t, note, contents)],
  );
  const working = judged?.value === undefined ? undefined : judged.working;
  const limited = judged !== undefined && judged.limits.length > 0 && point.kind !== "check";
  const door = useMemo<PhotoDoor>(
    () => ({
      photoUrl,
      keepPhoto: () => Promise.reject(new Error("a sealed inspection takes no photo")),
    }),
    [photoUrl],
  );
  if (isStopped(judged))
    return <StoppedPoint {...{ point, answer, contents }} judgement={judged} />;
  if (judged?.asked === false && answer === undefined) return null;
  return (
    <>
      <Point
        number={point.number}
        question={point.title}
        help={absenceNote(t, answer, contents) ?? momentWords(t, answer)}
        below={isLong(t, point, answer, contents)}
        answer={
          answer === undefined && point.kind !== "calculated" ? (
            <span className="answer-none">{t("inspection.unanswered")}</span>
          ) : (
            <PointAnswer
              {...{ point, answer, contents }}
              judgement={judged}
              declared={declared.includes(point.id)}
              open={false}
              sealed
            />
          )
        }
      />
      {(limited ||
        working !== undefined ||
        notes.length > 0 ||
        hashes.length + drawing.length > 0) && (
        <PointDetails>
          {working !== undefined && (
            <Equation>{t("calculated.working", { working: printWorking(working) })}</Equation>
          )}
          {limited && (
            <LimitWords
              quantity={point.definition.quantity}
              judgement={judged}
              limits={judged.limits}
              all={point.kind === "date"}
            />
          )}
          {notes.map((note) => (
            <p key={note} className="written">
              {note}
            </p>
          ))}
          <Photos title={point.title} hashes={drawing} most={0} door={door} drawing />
          <Photos title={point.title} hashes={hashes} most={0} door={door} />
        </PointDetails>
      )}
    </>
  );
}
