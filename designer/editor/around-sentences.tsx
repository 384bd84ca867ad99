import {
  PlaceHeading,
  printUnit,
  Sentence,
  SentencePanel,
  WordButton,
} from "@roundbook/runner/form";
import { e } from "../messages/editor.ts";
import {
  type Lines,
  printBands,
  printParticulars,
  printValues,
  readBands,
  readParticulars,
  readValues,
} from "../model/around-lines.ts";
import { setMember } from "../model/commands.ts";
import { readNumber } from "../model/particular-fields.ts";
import { gradedPoints, withoutScore, withScore } from "../model/score-edit.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";

/** What stands around the points: what is needed, named values, cautions, time, and the score. */
export const AroundSentences = () => {
  const { document, apply } = useDesk();
  const taken = <T,>(lines: Lines<T>, use: (value: T) => void): string | undefined => {
    if (!lines.ok) return e("around.bad-line", { line: lines.line, text: lines.text });
    use(lines.value);
    return undefined;
  };
  const opened = {
    title: useOpened({
      "around/title": () => (
        <TextEdit
          label={e("ed.title")}
          value={document.title}
          onTake={(text) => {
            if (text.trim() === "") return e("ed.title");
            apply(setMember(document, "title", text.trim()));
            return undefined;
          }}
        />
      ),
    }),
    warns: useOpened({
      "around/cautions": () => (
        <TextEdit
          many
          label={e("around.cautions")}
          value={(document.cautions ?? []).join("\n")}
          onTake={(text) => {
            const cautions = text
              .split("\n")
              .map((one) => one.trim())
              .filter(Boolean);
            apply(setMember(document, "cautions", cautions.length > 0 ? cautions : undefined));
            return undefined;
          }}
        />
      ),
    }),
    needs: useOpened({
      "around/particulars": () => (
        <TextEdit
          many
          mono
          label={e("around.particulars")}
          value={printParticulars(document.particulars)}
          onTake={(text) =>
            taken(readParticulars(text), (particulars) => apply({ ...document, particulars }))
          }
        />
      ),
    }),
    counts: useOpened({
      "around/values": () => (
        <TextEdit
          many
          mono
          label={e("around.values")}
          value={printValues(document.values)}
          onTake={(text) =>
            taken(readValues(text, document.values), (values) => apply({ ...document, values }))
          }
        />
      ),
    }),
    takes: useOpened({
      "around/minutes": () => (
        <TextEdit
          label={e("around.minutes-label")}
          value={String(document.minutes ?? "")}
          onTake={(text) => {
            const minutes = readNumber(text);
            if (text.trim() !== "" && (minutes === undefined || minutes <= 0))
              return e("around.minutes-label");
            apply(setMember(document, "minutes", minutes));
            return undefined;
          }}
        />
      ),
    }),
  };
  const particulars = Object.values(document.particulars ?? {});
  const values = Object.keys(document.values ?? {});
  return (
    <section>
      <PlaceHeading title={e("around.title")} />
      <SentencePanel label={e("around.title")}>
        <Sentence opened={opened.title}>
          <OpenBlank id="around/title">{document.title}</OpenBlank>
        </Sentence>
        <Sentence verb={e("verb.warns")} opened={opened.warns}>
          <OpenBlank id="around/cautions">
            {document.cautions?.join(" ") ?? e("around.no-cautions")}
          </OpenBlank>
        </Sentence>
        <Sentence verb={e("verb.needs")} opened={opened.needs}>
          <OpenBlank id="around/particulars">
            {particulars
              .map(({ title, unit }) =>
                e("around.particular", { title, unit: unit ? ` in ${printUnit(unit)}` : "" }),
              )
              .join(", ") || e("around.no-particulars")}
          </OpenBlank>
        </Sentence>
        <Sentence verb={e("verb.counts")} opened={opened.counts}>
          <OpenBlank id="around/values">{values.join(", ") || e("around.no-values")}</OpenBlank>
        </Sentence>
        <Sentence verb={e("verb.takes")} opened={opened.takes}>
          <OpenBlank id="around/minutes">
            {document.minutes
              ? e("around.minutes", { count: document.minutes })
              : e("around.no-minutes")}
          </OpenBlank>
        </Sentence>
        {(gradedPoints(document).length > 0 || document.scores) && <ScoreSentences />}
      </SentencePanel>
    </section>
  );
};

const ScoreSentences = () => {
  const { document, apply } = useDesk();
  const scores = Object.entries(document.scores ?? {});
  const [first] = scores;
  const opened = useOpened({
    "around/score-title": () => (
      <TextEdit
        label={e("around.score-title")}
        value={first?.[1].title ?? ""}
        onTake={(text) => {
          if (text.trim() === "") return e("around.score-title");
          apply(withScore(document, { title: text.trim() }));
          return undefined;
        }}
      />
    ),
    "around/bands": () => (
      <TextEdit
        many
        label={e("around.bands")}
        value={printBands(first?.[1].bands ?? [])}
        onTake={(text) => {
          const bands = readBands(text);
          if (!bands.ok) return e("around.bad-line", { line: bands.line, text: bands.text });
          apply(withScore(document, { bands: bands.value }));
          return undefined;
        }}
      />
    ),
  });
  if (!first) {
    return (
      <Sentence verb={e("verb.scores")}>
        {e("around.no-score")}.{" "}
        <WordButton quiet onClick={() => apply(withScore(document, {}))}>
          {e("around.score-add")}
        </WordButton>
      </Sentence>
    );
  }
  const [, score] = first;
  return (
    <Sentence verb={e("verb.scores")} opened={opened}>
      <OpenBlank id="around/score-title">
        {e("around.score-of", { title: score.title, count: score.of.length })}
      </OpenBlank>
      {": "}
      <OpenBlank id="around/bands">
        {score.bands.map((band) => `${band.from} ${band.title}`).join(", ")}
      </OpenBlank>{" "}
      <WordButton quiet onClick={() => apply(withoutScore(document))}>
        {e("around.score-remove")}
      </WordButton>
    </Sentence>
  );
};
