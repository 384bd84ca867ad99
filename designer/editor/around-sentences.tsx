import {
  LeafWords,
  PlaceHeading,
  Sentence,
  SentencePanel,
  WordButton,
} from "@roundbook/runner/form";
import { type Block, particularsInOrder } from "@roundbook/schemas";
import { useEffect, useState } from "react";
import { b } from "../messages/blocks.ts";
import { e } from "../messages/editor.ts";
import { setMember } from "../model/commands.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { includedBlocks } from "../model/include-edit.ts";
import { readNumber } from "../model/read-number.ts";
import { OpenBlank, TextEdit, useOpened } from "./blanks.tsx";
import { useDesk } from "./desk.tsx";
import { IncludeSentence } from "./include-sentence.tsx";
import { ParticularSentences } from "./particular-sentences.tsx";
import { ScoreSentences } from "./score-sentences.tsx";
import { StopSentences } from "./stop-sentences.tsx";
import { ValueSentences } from "./value-sentences.tsx";

/** What stands around the points: its title, cautions, what is needed, named values, the score. */
export const AroundSentences = () => {
  const { document, blocks, open, setOpen } = useDesk();
  // A page that has points begins with them; what stands around them is a word away.
  const [shown, setShown] = useState(() => Object.keys(document.properties).length === 0);
  const within = open !== null && AROUND.test(open);
  useEffect(() => {
    if (within) setShown(true);
  }, [within]);
  const unfolded = shown || within;
  return (
    <section>
      <PlaceHeading
        title={e("around.title")}
        aside={
          <WordButton
            quiet
            aria-expanded={unfolded}
            onClick={() => {
              if (within) setOpen(null);
              setShown(!unfolded);
            }}
          >
            {e(unfolded ? "around.fold" : "around.unfold")}
          </WordButton>
        }
      />
      {unfolded ? (
        <Sentences />
      ) : (
        <LeafWords>
          <p className="second">{aroundWords(document, blocks)}</p>
        </LeafWords>
      )}
    </section>
  );
};

/** Blanks that lie around the points. */
const AROUND = /^(around|include|particulars|values|scores|stops)\//;

/** All that stands around the points in one line: "It needs: Length. It counts with: …". */
const aroundWords = (document: DraftDocument, blocks: readonly Block[]): string => {
  const list = (titles: readonly string[]) => titles.join(", ");
  const said = [
    [
      "around.said-particulars",
      particularsInOrder(document.particulars ?? {}).map(([, { title }]) => title),
    ],
    [
      "around.said-values",
      Object.entries(document.values ?? {}).map(([name, value]) => value.title ?? name),
    ],
    ["around.said-scores", Object.values(document.scores ?? {}).map((one) => one.title)],
  ] as const;
  const cautions = document.cautions?.length ?? 0;
  const words = [
    ...(cautions > 0 ? [e("around.said-cautions", { count: cautions })] : []),
    ...said.flatMap(([key, titles]) =>
      titles.length > 0 ? [e(key, { titles: list(titles) })] : [],
    ),
  ];
  const stops = document.stops?.length ?? 0;
  const taken = includedBlocks(document).map(
    (name) => blocks.find((block) => block.name === name)?.title ?? name,
  );
  if (taken.length > 0) words.push(b("include.said", { titles: list(taken) }));
  if (stops > 0) words.push(e("around.said-stops", { count: stops }));
  return words.length > 0 ? words.join(" ") : e("around.said-nothing");
};

const Sentences = () => {
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
      <IncludeSentence />
      <ParticularSentences />
      <ValueSentences />
      <ScoreSentences />
      <StopSentences />
    </SentencePanel>
  );
};
