import type { Evidence, Judgement, LimitJudgement, Problem } from "@roundbook/schemas";
import { useState } from "react";
import { AbsenceSheet } from "./absence-sheet.tsx";
import type { Draft, FieldProps, LastReading, PhotoDoor } from "./fields/field.ts";
import { openingDraft } from "./fields/reading-entry.ts";
import { GroupLine } from "./group-line.tsx";
import { PlaceHeading } from "./look/place-heading.tsx";
import { type Messages, useMessages } from "./messages/messages.tsx";
import { declarable, declaredIn } from "./model/group-answer.ts";
import type { FormPoint, Section } from "./model/sections.ts";
import { OpenPoint, PointRow } from "./point-view.tsx";
import type { Filling } from "./use-filling.ts";

export interface SectionViewProps {
  readonly section: Section;
  readonly count: number;
  readonly judgement: Judgement;
  /** What is wrong with how answers are written, by their names. */
  readonly malformed: ReadonlyMap<string, Problem>;
  readonly filling: Filling;
  readonly previous: Readonly<Record<string, LastReading>>;
  readonly openDefects: Readonly<Record<string, string>>;
  readonly photos: PhotoDoor;
  readonly opened: OpenedPoint | undefined;
  readonly clock: (() => string) | undefined;
  readonly about: Surroundings;
  onOpen(id: string | null): void;
}

/** What fields know of the world outside the form. */
export type Surroundings = Pick<FieldProps, "now" | "on" | "signer">;

/** What the open point's field and the pad at the foot share. */
export interface OpenedPoint {
  readonly point: FormPoint;
  readonly draft: Draft;
  onDraft(draft: Draft): void;
  /** The limits that apply now, known before anything is written. */
  readonly limits: readonly LimitJudgement[];
  /** How many readings are asked for, where that can be told. */
  readonly expected: number | undefined;
  readonly absenceOpen: boolean;
  onAbsence(open: boolean): void;
}

export function SectionView(props: SectionViewProps) {
  const { section, count, judgement, filling, opened, photos, onOpen } = props;
  const { t } = useMessages();
  const { filled } = filling;
  const [declaredAt, setDeclaredAt] = useState<Readonly<Record<string, string>>>({});
  const offered = declarable(section, filled.answers, (id) => judgement.points[id]?.asked ?? true);
  const declared = declaredIn(section, filled.declared);
  const declare = () => {
    filling.declare(offered);
    if (props.clock) setDeclaredAt({ ...declaredAt, [section.key]: props.clock() });
  };
  return (
    <>
      <PlaceHeading
        number={section.number}
        title={section.title}
        aside={partWords(t, section, count)}
      />
      {section.groupAnswer && (
        <GroupLine
          declarable={offered}
          declared={declared}
          time={declaredAt[section.key]}
          onDeclare={declare}
          onUndo={() => filling.withdraw(declared)}
        />
      )}
      {section.points.map((point) =>
        opened && point.id === opened.point.id ? (
          <Opened key={point.id} {...props} opened={opened} photos={photos} />
        ) : (
          <PointRow
            key={point.id}
            point={point}
            answer={filled.answers[point.id]}
            judgement={judgement.points[point.id]}
            declared={declared.includes(point.id)}
            onOpen={onOpen}
          />
        ),
      )}
    </>
  );
}

/** "Sockets, part 3 of 7" */
function partWords(t: Messages["t"], { under, number }: Section, count: number) {
  if (under !== null) return t("repeat.part", { group: under, number, count });
  return count > 1 ? t("form.part", { number, count }) : undefined;
}

const NO_EVIDENCE: Evidence[string] = [];

function Opened(props: SectionViewProps & { readonly opened: OpenedPoint }) {
  const { opened, filling, malformed, openDefects, onOpen } = props;
  const { point } = opened;
  const { answers, declared } = filling.filled;
  return (
    <>
      <OpenPoint
        {...fieldProps(props)}
        declared={declared.includes(point.id)}
        malformed={malformed.get(point.id)}
        onClose={() => onOpen(null)}
        onClear={() => {
          filling.setAnswer(point.id, undefined);
          if (answers[point.id] !== undefined && filling.filled.waits[point.id] !== undefined)
            filling.setWait(point.id, undefined);
          opened.onDraft(openingDraft(point, undefined));
        }}
        openDefect={openDefects[point.id]}
      />
      {opened.absenceOpen && (
        <AbsenceSheet
          point={point}
          answer={answers[point.id]}
          onWrite={(answer) => {
            filling.setAnswer(point.id, answer);
            opened.onDraft(openingDraft(point, answer));
            opened.onAbsence(false);
          }}
          onClose={() => opened.onAbsence(false)}
        />
      )}
    </>
  );
}

/** The open point as its field and its pad see it. */
export function fieldProps(
  props: Pick<SectionViewProps, "filling" | "judgement" | "previous" | "photos" | "about"> & {
    readonly opened: OpenedPoint;
  },
): FieldProps {
  const { opened, filling, judgement, previous, photos, about } = props;
  const { id } = opened.point;
  return {
    ...about,
    point: opened.point,
    answer: filling.filled.answers[id],
    onAnswer: (answer) => filling.setAnswer(id, answer),
    items: filling.filled.evidence[id] ?? NO_EVIDENCE,
    onEvidence: (items) => filling.setEvidence(id, items),
    judgement: judgement.points[id],
    limits: opened.limits,
    expected: opened.expected,
    wait: filling.filled.waits[id],
    onWait: (wait) => filling.setWait(id, wait),
    last: previous[id],
    draft: opened.draft,
    onDraft: opened.onDraft,
    onAbsent: () => opened.onAbsence(true),
    photos,
  };
}
