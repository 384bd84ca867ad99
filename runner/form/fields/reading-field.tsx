import { isReading } from "@roundbook/schemas";
import { type KeyboardEvent, useEffect, useRef } from "react";
import { printUnit } from "../look/print-unit.ts";
import { ReadingBox } from "../look/reading-box.tsx";
import { useWide } from "../look/use-wide.ts";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { pressKey } from "../model/reading-text.ts";
import { takeFocus } from "../take-focus.ts";
import type { FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { otherUnit, readingOf, write } from "./reading-entry.ts";

/** The beginning of a number, which is not yet wrong. */
const BEGINNING = /^(<=?|>=?|≤|≥)?[-−]?[.,]?$/;

export function ReadingField(props: FieldProps) {
  const { point, answer, draft, judgement, last } = props;
  const { t } = useMessages();
  const wide = useWide();
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (box.current) takeFocus(box.current);
  }, []);

  const reading = readingOf(draft);
  const unreadable = reading === undefined && !BEGINNING.test(draft.text);
  const other = otherUnit(point, draft.unit);

  const onKeyDown = (event: KeyboardEvent) => {
    const { key } = event;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (key !== "<" && key !== ">" && key !== "-") return;
    event.preventDefault();
    write(props, { text: pressKey(draft.text, key) });
  };

  return (
    <>
      <ReadingBox
        ref={box}
        label={t("reading.label", { title: point.definition.title, unit: draft.unit })}
        unit={printUnit(draft.unit)}
        pad={!wide}
        value={draft.text}
        // Kept as it came: "1e3" with its letter taken out would be another reading, 13.
        onChange={(event) => write(props, { text: event.target.value })}
        onKeyDown={onKeyDown}
        aria-invalid={unreadable || undefined}
      />
      {wide && other !== undefined && (
        <WordList>
          <WordButton onClick={() => write(props, { unit: other })}>
            {t("reading.unit", { unit: other })}
          </WordButton>
        </WordList>
      )}
      {unreadable && <p className="danger">{t("reading.unreadable", { text: draft.text })}</p>}
      <LimitPicture
        quantity={point.definition.quantity}
        judgement={judgement}
        limits={props.limits}
        reading={isReading(answer) ? answer : undefined}
        last={last}
      />
    </>
  );
}
