import { type KeyboardEvent, useEffect, useRef } from "react";
import { printUnit } from "../look/print-unit.ts";
import { ReadingBox } from "../look/reading-box.tsx";
import { useWide } from "../look/use-wide.ts";
import { WordButton, WordList } from "../look/word.tsx";
import { useMessages } from "../messages/messages.tsx";
import { pressKey } from "../model/reading-text.ts";
import { takeFocus } from "../take-focus.ts";
import type { FieldProps } from "./field.ts";
import { currentBox, otherUnit, readingOf, write } from "./reading-entry.ts";

/** The beginning of a number, which is not yet wrong. */
const BEGINNING = /^(<=?|>=?|≤|≥)?[-−]?[.,]?$/;

/** The box a reading is written in, with its unit and what is wrong with it. */
export function ReadingInput(props: FieldProps & { readonly label: string }) {
  const { point, draft, label } = props;
  const { t } = useMessages();
  const wide = useWide();
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const field = input.current;
    if (!field) return;
    takeFocus(field);
    // Two frames on, the pad that opened with the box has its height and the page its padding.
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => {
        if (field.ownerDocument.activeElement === field) field.scrollIntoView({ block: "nearest" });
      });
    });
    return () => cancelAnimationFrame(frame);
  }, []);

  const box = currentBox(point, draft);
  const empty = box.text === "";
  // *Clear* goes with what it cleared: the focus it had would be lost.
  useEffect(() => {
    const field = input.current;
    const { activeElement, body } = field?.ownerDocument ?? document;
    if (field && empty && (activeElement === null || activeElement === body)) takeFocus(field);
  }, [empty]);
  const unreadable = readingOf(box) === undefined && !BEGINNING.test(box.text);
  const other = otherUnit(point, box.unit);

  const onKeyDown = (event: KeyboardEvent) => {
    const { key } = event;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (key !== "<" && key !== ">" && key !== "-") return;
    event.preventDefault();
    write(props, { text: pressKey(box.text, key) });
  };

  return (
    <>
      <ReadingBox
        ref={input}
        label={t("reading.label", { title: label, unit: box.unit })}
        unit={printUnit(box.unit)}
        pad={!wide}
        value={box.text}
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
      {unreadable && <p className="danger">{t("reading.unreadable", { text: box.text })}</p>}
    </>
  );
}
