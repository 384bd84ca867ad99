import { isSample } from "@roundbook/schemas";
import { useState } from "react";
import { LineField } from "../look/line-field.tsx";
import { printUnit } from "../look/print-unit.ts";
import { ReadingBox } from "../look/reading-box.tsx";
import { WordButton, WordList } from "../look/word.tsx";
import { instantWords } from "../messages/instant-words.ts";
import { useMessages } from "../messages/messages.tsx";
import { Doubt } from "./doubt.tsx";
import type { Box, FieldProps } from "./field.ts";
import { LimitPicture } from "./limit-picture.tsx";
import { OtherAnswer } from "./other-answer.tsx";
import { currentBox, keepAsIs, otherUnit, quantityOf, readingOf } from "./reading-entry.ts";

/** A sample taken for a laboratory: by the words on its bottle, and pending until its result comes. */
export function SampleField(props: FieldProps) {
  const { point, answer, onAnswer, draft, onDraft, judgement, limits, last, now } = props;
  const { t } = useMessages();
  const given = isSample(answer) ? answer : undefined;
  const box = currentBox(point, draft);
  const [known, setKnown] = useState(given?.result !== undefined);
  const result = readingOf(box);
  const other = otherUnit(point, box.unit);

  const write = (sample: string, next: Box, takenAt = given?.takenAt) => {
    const reading = readingOf(next);
    onAnswer(
      sample === ""
        ? undefined
        : {
            sample,
            takenAt: takenAt ?? new Date(now()).toISOString(),
            ...(reading !== undefined && { result: reading }),
          },
    );
  };
  const setBox = (change: Partial<Box>) => {
    const next = { ...box, asked: false, sure: false, ...change };
    onDraft({ at: 0, boxes: [next] });
    write(given?.sample ?? "", next);
  };
  return (
    <>
      <LineField
        label={t("sample.label")}
        aria-label={`${point.title}: ${t("sample.label")}`}
        autoComplete="off"
        maxLength={100}
        value={given?.sample ?? ""}
        onChange={({ target }) => write(target.value, box)}
      />
      {given?.takenAt !== undefined && (
        <p className="second">{t("sample.taken", { at: instantWords(given.takenAt) })}</p>
      )}
      <WordList>
        {given && (
          <WordButton onClick={() => write(given.sample, box, new Date(now()).toISOString())}>
            {t("sample.now")}
          </WordButton>
        )}
        {given && !known && (
          <WordButton onClick={() => setKnown(true)}>{t("sample.known")}</WordButton>
        )}
        <OtherAnswer {...props} />
      </WordList>
      {given && known && (
        <ReadingBox
          label={t("sample.result", { title: point.title, unit: box.unit })}
          unit={printUnit(box.unit)}
          value={box.text}
          onChange={({ target }) => setBox({ text: target.value })}
          aria-invalid={(box.text !== "" && result === undefined) || undefined}
        />
      )}
      {given && known && other !== undefined && (
        <WordList>
          <WordButton onClick={() => setBox({ unit: other })}>
            {t("reading.unit", { unit: other })}
          </WordButton>
        </WordList>
      )}
      {box.text !== "" && result === undefined && (
        <p className="danger">{t("reading.unreadable", { text: box.text })}</p>
      )}
      <Doubt
        {...{ point, box }}
        onKeep={() => onDraft(keepAsIs(point, draft))}
        onChange={() => setBox({ text: "" })}
      />
      {result === undefined && <p className="second">{t("sample.pending")}</p>}
      <LimitPicture
        quantity={quantityOf(point)}
        judgement={judgement}
        limits={limits}
        reading={given?.result}
        last={last}
        silent={result === undefined}
        fromZero
      />
    </>
  );
}
