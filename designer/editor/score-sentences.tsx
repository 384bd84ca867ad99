import { Sentence, WordButton } from "@roundbook/runner/form";
import type { ScoreDefinition } from "@roundbook/schemas";
import { e } from "../messages/editor.ts";
import { f } from "../messages/facts.ts";
import {
  addBand,
  addScore,
  changeScore,
  gradedPoints,
  readWeights,
  removeScore,
  setWeights,
} from "../model/score-edit.ts";
import { BandSentence } from "./band-sentence.tsx";
import { ChoiceEdit, ManyEdit, OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

/** Scores over graded points, and what each band of them means. */
export const ScoreSentences = () => {
  const { document, apply } = useDesk();
  const scores = Object.entries(document.scores ?? {});
  if (scores.length === 0 && gradedPoints(document).length === 0) return null;
  if (scores.length === 0) {
    return (
      <Sentence verb={e("verb.scores")}>
        {e("around.no-score")}{" "}
        <WordButton quiet onClick={() => apply(addScore(document, e("around.score-first")))}>
          {e("around.score-add")}
        </WordButton>
      </Sentence>
    );
  }
  return scores.map(([name, score]) => <OneScore key={name} {...{ name, score }} />);
};

const OneScore = ({ name, score }: { readonly name: string; readonly score: ScoreDefinition }) => {
  const { document, apply } = useDesk();
  const id = (part: string) => `scores/${name}/${part}`;
  const change = (next: (one: ScoreDefinition) => ScoreDefinition) =>
    apply(changeScore(document, name, next));
  const titles = new Map(
    score.of.map((name) => [name, document.properties[name]?.title ?? name] as const),
  );
  const said = Object.entries(score.weights ?? {}).map(
    ([name, weight]) => `${weight} × ${titles.get(name) ?? name}`,
  );
  const opened = useOpened({
    [id("title")]: () => (
      <TextEdit
        label={e("around.score-title")}
        value={score.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          change((one) => ({ ...one, title: text.trim() }));
          return undefined;
        }}
      />
    ),
    [id("method")]: () => (
      <ChoiceEdit
        label={e("l.method")}
        choices={(["share-of-maximum", "sum", "mean"] as const).map((value) => ({
          value,
          label: e(`method.${value}`),
        }))}
        chosen={score.method}
        onChoose={(method) => change((one) => ({ ...one, method }))}
      />
    ),
    [id("weights")]: () => (
      <TextEdit
        many
        label={e("l.weights")}
        value={score.of
          .map((name) => `${score.weights?.[name] ?? 1} × ${titles.get(name) ?? name}`)
          .join("\n")}
        onTake={(text) => {
          const read = readWeights(text, titles);
          if ("wrong" in read)
            return e("l.weights-wrong", { title: titles.values().next().value ?? "" });
          change((one) => setWeights(one, read.weights));
          return undefined;
        }}
      />
    ),
    [id("of")]: () => (
      <ManyEdit
        label={e("around.score-of")}
        choices={gradedPoints(document).map((value) => ({
          value,
          label: document.properties[value]?.title ?? value,
        }))}
        chosen={score.of}
        onChange={(of) =>
          change((one) => (of.length > 0 ? setWeights({ ...one, of }, one.weights ?? {}) : one))
        }
      />
    ),
  });
  return (
    <>
      <Sentence verb={e("verb.scores")} opened={opened}>
        <OpenBlank id={id("title")}>{score.title}</OpenBlank>{" "}
        <OpenBlank id={id("of")}>{f("score.of", { count: score.of.length })}</OpenBlank>
        {", "}
        <OpenBlank id={id("weights")}>
          {said.length > 0 ? e("s.weights", { weights: said.join(", ") }) : e("s.weights-same")}
        </OpenBlank>
        {", "}
        <OpenBlank id={id("method")}>{e(`method.${score.method}`)}</OpenBlank>
        {", "}
        {e("around.score-how", { rule: f(`round.${score.round.rule}`) })}{" "}
        <WordButton quiet onClick={() => apply(removeScore(document, name))}>
          {e("around.score-remove")}
        </WordButton>
      </Sentence>
      {score.bands.map((band, at) => (
        // Bands have no identity but their place.
        <BandSentence key={at} {...{ id, band, at, change }} />
      ))}
      <Sentence>
        <WordButton quiet onClick={() => change((one) => addBand(one, e("around.band-new")))}>
          {e("around.band-add")}
        </WordButton>
      </Sentence>
    </>
  );
};
