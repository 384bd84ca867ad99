import type { Answer, PointJudgement, Problem } from "@roundbook/schemas";
import { memo, useEffect, useRef } from "react";
import { EvidenceAsk } from "./evidence-ask.tsx";
import type { FieldProps } from "./fields/field.ts";
import { FIELD_KINDS } from "./fields/registry.ts";
import { Point } from "./look/point.tsx";
import { WordButton, WordList } from "./look/word.tsx";
import { useMessages } from "./messages/messages.tsx";
import { useTitled } from "./messages/titled.tsx";
import { absenceNote, isLong } from "./model/answer-words.ts";
import type { FormPoint } from "./model/sections.ts";
import { isStopped } from "./model/walk.ts";
import { PointAnswer } from "./point-answer.tsx";
import { StoppedPoint } from "./stopped-point.tsx";
import { takeFocus } from "./take-focus.ts";

interface Shown {
  readonly point: FormPoint;
  readonly answer: Answer | undefined;
  readonly judgement: PointJudgement | undefined;
  readonly declared: boolean;
}

/** A closed point: one row. It is drawn again only when what it shows has changed. */
export const PointRow = memo(
  function PointRow({
    point,
    answer,
    judgement,
    declared,
    onOpen,
  }: Shown & { onOpen(id: string): void }) {
    const { t } = useMessages();
    if (isStopped(judgement)) return <StoppedPoint {...{ point, answer, judgement }} />;
    return (
      <Point
        id={`point-${point.id}`}
        number={point.number}
        question={point.title}
        help={absenceNote(t, answer)}
        answer={<PointAnswer {...{ point, answer, judgement, declared }} open={false} />}
        below={isLong(t, point, answer)}
        onToggle={() => onOpen(point.id)}
      />
    );
  },
  (before, after) =>
    before.point === after.point &&
    before.answer === after.answer &&
    before.declared === after.declared &&
    before.onOpen === after.onOpen &&
    before.judgement?.verdict === after.judgement?.verdict &&
    before.judgement?.value === after.judgement?.value &&
    before.judgement?.asked === after.judgement?.asked,
);

export interface OpenPointProps extends FieldProps {
  readonly declared: boolean;
  /** What is wrong with how the answer is written; it is kept all the same. */
  readonly malformed: Problem | undefined;
  onClose(): void;
  onClear(): void;
  /** A sentence about a defect already open here. */
  readonly openDefect: string | undefined;
}

/** The one open point: its field, what its verdict asks for, and a way to clear it. */
export function OpenPoint(props: OpenPointProps) {
  const { point, answer, judgement, declared, malformed, onClose, onClear, openDefect, ...field } =
    props;
  const { t } = useMessages();
  const titled = useTitled();
  const here = useRef<HTMLDivElement>(null);
  // Fields that take keys focus themselves; elsewhere the point does, so that keys reach the form.
  useEffect(() => {
    const element = here.current;
    if (element && !element.contains(document.activeElement)) takeFocus(element);
    element?.scrollIntoView?.({ block: "nearest" });
  }, []);
  const { Body } = FIELD_KINDS[point.kind];
  return (
    <div ref={here} tabIndex={-1} className="point-focus">
      <Point
        id={`point-${point.id}`}
        number={point.number}
        question={point.title}
        help={absenceNote(t, answer) ?? point.definition.description}
        answer={<PointAnswer {...{ point, answer, judgement, declared }} open />}
        open
        onToggle={onClose}
      >
        <Body {...field} {...{ point, answer, judgement }} />
        {malformed && (
          <p className="danger" role="status">
            {titled(malformed)}
          </p>
        )}
        <EvidenceAsk
          {...{ point, judgement }}
          items={field.items}
          onChange={field.onEvidence}
          photos={field.photos}
        />
        {openDefect !== undefined && <p className="second">{openDefect}</p>}
        {answer !== undefined && (
          <WordList>
            <WordButton quiet onClick={onClear}>
              {t("answer.clear")}
            </WordButton>
          </WordList>
        )}
      </Point>
    </div>
  );
}
