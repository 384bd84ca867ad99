import { Sentence, WordButton } from "@roundbook/runner/form";
import type { ScoreDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import { duration, nextWords } from "../model/fact-words.ts";
import { readNumber } from "../model/read-number.ts";
import { type Band, changeBand, readNext, removeBand } from "../model/score-edit.ts";
import { ChoiceEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

const OUTCOMES = ["pass", "advisory", "fail", "none"] as const;
const outcomeWords = (outcome: (typeof OUTCOMES)[number]): string =>
  outcome === "none" ? e("around.band-no-outcome") : f(`band.outcome-${outcome}`);

/** From which score on, what it is called, whether it passes, and when the next check is. */
export const BandSentence = ({
  id,
  band,
  at,
  change,
}: {
  readonly id: (part: string) => string;
  readonly band: Band;
  readonly at: number;
  readonly change: (next: (score: ScoreDefinition) => ScoreDefinition) => void;
}) => {
  const { setOpen } = useDesk();
  const part = (name: string) => id(`bands/${at}/${name}`);
  const set = (next: (one: Band) => Band) => change((score) => changeBand(score, at, next));
  const opened = useOpened({
    [part("from")]: () => (
      <TextEdit
        label={e("around.band-from")}
        value={String(band.from)}
        onTake={(text) => {
          const from = readNumber(text);
          if (from === undefined) return e("l.number-wrong");
          set((one) => ({ ...one, from }));
          return undefined;
        }}
      />
    ),
    [part("title")]: () => (
      <TextEdit
        label={e("around.band-title")}
        value={band.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          set((one) => ({ ...one, title: text.trim() }));
          return undefined;
        }}
      />
    ),
    [part("outcome")]: () => (
      <ChoiceEdit
        label={e("around.band-outcome")}
        choices={OUTCOMES.map((value) => ({ value, label: outcomeWords(value) }))}
        chosen={band.outcome ?? "none"}
        onChoose={(outcome) =>
          set(({ outcome: _, ...rest }) => (outcome === "none" ? rest : { ...rest, outcome }))
        }
      />
    ),
    [part("next")]: () => (
      <TextEdit
        label={e("around.band-next")}
        value={band.next ? duration(band.next) : ""}
        onTake={(text) => {
          const next = readNext(text);
          if (next === undefined && text.trim() !== "") return e("around.band-next-wrong");
          set(({ next: _, ...rest }) => (next ? { ...rest, next } : rest));
          return undefined;
        }}
      />
    ),
  });
  return (
    <Sentence
      opened={
        opened && (
          <>
            {opened}
            <WordButton
              quiet
              onClick={() => {
                setOpen(null);
                change((score) => removeBand(score, at));
              }}
            >
              {e("around.band-remove")}
            </WordButton>
          </>
        )
      }
    >
      {e("s.from")} <OpenBlank id={part("from")}>{String(band.from)}</OpenBlank>:{" "}
      <OpenBlank id={part("title")}>{band.title}</OpenBlank>,{" "}
      <OpenBlank id={part("outcome")}>{outcomeWords(band.outcome ?? "none")}</OpenBlank>,{" "}
      <OpenBlank id={part("next")}>
        {band.next ? nextWords(band.next) : e("around.band-no-next")}
      </OpenBlank>
    </Sentence>
  );
};
