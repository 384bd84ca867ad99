import { PlaceHeading, Sentence, SentencePanel } from "@roundbook/runner/form";
import { e } from "../messages/editor.ts";
import { setMember } from "../model/commands.ts";
import { readNumber } from "../model/particular-fields.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { ParticularSentences } from "./particular-sentences.tsx";
import { ScoreSentences } from "./score-sentences.tsx";
import { ValueSentences } from "./value-sentences.tsx";

/** What stands around the points: its title, cautions, what is needed, named values, the score. */
export const AroundSentences = () => {
  const { document, apply } = useDesk();
  const title = useOpened({
    "around/title": () => (
      <TextEdit
        label={e("ed.title")}
        value={document.title}
        onTake={(text) => {
          if (text.trim() === "") return e("l.needed");
          apply(setMember(document, "title", text.trim()));
          return undefined;
        }}
      />
    ),
    "around/minutes": () => (
      <TextEdit
        label={e("around.minutes-label")}
        value={String(document.minutes ?? "")}
        onTake={(text) => {
          const minutes = readNumber(text);
          if (text.trim() !== "" && (minutes === undefined || minutes <= 0))
            return e("l.number-wrong");
          apply(setMember(document, "minutes", minutes));
          return undefined;
        }}
      />
    ),
  });
  const warns = useOpened({
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
  });
  return (
    <section>
      <PlaceHeading title={e("around.title")} />
      <SentencePanel label={e("around.title")}>
        <Sentence verb={e("verb.is-called")} opened={title}>
          <OpenBlank id="around/title">{document.title}</OpenBlank>
          {`; ${e("around.takes")} `}
          <OpenBlank id="around/minutes">
            {document.minutes
              ? e("around.minutes", { count: document.minutes })
              : e("around.no-minutes")}
          </OpenBlank>
        </Sentence>
        <Sentence verb={e("verb.warns")} opened={warns}>
          <OpenBlank id="around/cautions">
            {document.cautions?.join(" ") ?? e("around.no-cautions")}
          </OpenBlank>
        </Sentence>
        <ParticularSentences />
        <ValueSentences />
        <ScoreSentences />
      </SentencePanel>
    </section>
  );
};
