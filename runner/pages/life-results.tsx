import {
  type Answers,
  type Checklist,
  type HistoryEntry,
  isSample,
  type Judgement,
} from "@roundbook/schemas";
import { useState } from "react";
import {
  LeafWords,
  PlaceHeading,
  Point,
  pendingOf,
  printQuantity,
  titleOf,
  WordButton,
} from "../form/index.ts";
import { book } from "../messages/book.ts";
import { printDay } from "./day-words.ts";
import { useDevice } from "./device.tsx";
import { ResultSheet } from "./result-sheet.tsx";
import { useBundles } from "./use-bundle.ts";

export interface LifeResultsProps {
  readonly row: HistoryEntry;
  readonly document: Checklist;
  readonly judgement: Judgement;
  readonly answers: Answers;
}

/** What the laboratory found in the samples of an inspection since, and what it still owes. */
export const LifeResults = ({ row, document, judgement, answers }: LifeResultsProps) => {
  const { person } = useDevice();
  const bundles = useBundles().data ?? [];
  const [open, setOpen] = useState<string>();
  const pending = pendingOf(judgement);
  const came = row.received?.entries ?? [];
  const { asset } = row.entry;
  const zone = bundles.find(({ bundle }) => bundle.assets.some(({ id }) => id === asset))?.bundle
    .site.zone;
  const title = (point: string) => titleOf(document, `answers.${point}`);
  return (
    <>
      {came.length > 0 && (
        <>
          <PlaceHeading title={book("result.came")} />
          <LeafWords>
            {came.map(({ id, body: { point, result, reportedOn } }) => {
              const { value, unit, comparator } = result;
              const said = {
                title: title(point),
                value: printQuantity(value, unit, { comparator }),
              };
              return (
                <p key={id} className="written">
                  {reportedOn === undefined
                    ? book("result.of", said)
                    : book("result.on", { ...said, day: printDay(reportedOn) })}
                </p>
              );
            })}
          </LeafWords>
        </>
      )}
      {pending.length > 0 && (
        <PlaceHeading title={book("result.title")} aside={String(pending.length)} />
      )}
      {pending.map((point) => {
        const answer = answers[point];
        return (
          <Point
            key={point}
            number=""
            question={title(point)}
            help={isSample(answer) ? answer.sample : undefined}
            answer={
              person.role !== "auditor" &&
              zone !== undefined && (
                <WordButton onClick={() => setOpen(point)}>{book("result.write")}</WordButton>
              )
            }
          />
        );
      })}
      {pending.length > 0 && zone === undefined && (
        <LeafWords>
          <p className="second">{book("result.elsewhere")}</p>
        </LeafWords>
      )}
      {open !== undefined && zone !== undefined && (
        <ResultSheet
          key={open}
          {...{ row, document, zone }}
          point={open}
          onClose={() => setOpen(undefined)}
        />
      )}
    </>
  );
};
