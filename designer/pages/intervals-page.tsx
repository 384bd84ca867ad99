import { Empty, Loading, Row, Rows, TitleBlock, WordLink } from "@roundbook/runner/form";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { iv } from "../messages/intervals.ts";
import { civilToday, type IntervalDraft, readDraft } from "../model/interval-draft.ts";
import { DeskPage } from "./desk-page.tsx";
import { useIntervalSentence } from "./interval-sentence.ts";
import { useAssetTypes, useIntervalDrafts, useIntervals } from "./queries.ts";

interface Line {
  readonly id: string;
  readonly definition: IntervalDraft;
  /** What is so beside its sentence: a draft, or how far its dates are. */
  readonly state: string | undefined;
}

const useLines = (): readonly Line[] | undefined => {
  const intervals = useIntervals().data;
  const drafts = useIntervalDrafts();
  if (!intervals || drafts.isPending) return undefined;
  const kept = drafts.data ?? [];
  const around = { today: civilToday(new Date()) };
  return [
    ...intervals.map(({ id, definition, progress }) => ({
      id,
      definition,
      state: progress
        ? iv("list.progress", { done: progress.done, of: progress.of })
        : kept.some((one) => one.id === id)
          ? iv("list.draft-of")
          : undefined,
    })),
    ...kept
      .filter(({ id }) => !intervals.some((one) => one.id === id))
      .map(({ id, definition }) => ({
        id,
        definition: readDraft(definition, around),
        state: iv("list.draft"),
      })),
  ];
};

export const IntervalsPage = () => {
  const [, navigate] = useLocation();
  const lines = useLines();
  const types = useAssetTypes().data;
  const sentence = useIntervalSentence();
  const add = (word: string) => (
    <WordLink href="/designer/intervals/new" onFollow={() => navigate("/intervals/new")}>
      {word}
    </WordLink>
  );
  return (
    <DeskPage current="intervals">
      <TitleBlock title={iv("list.title")} actions={lines?.length !== 0 && add(iv("list.new"))} />
      {!lines && <Loading label={d("app.opening")} />}
      {lines?.length === 0 && (
        <Empty sentence={iv("list.empty")} actions={add(iv("list.begin"))}>
          <p>{iv("list.empty-next")}</p>
        </Empty>
      )}
      <Rows>
        {lines?.map(({ id, definition, state }) => (
          <Row
            key={id}
            name={definition.title || iv("list.untitled")}
            second={sentence(definition)}
            more={state}
            due={types?.find((one) => one.assetType === definition.assetType)?.title}
            href={`/designer/intervals/${id}`}
            onFollow={() => navigate(`/intervals/${id}`)}
          />
        ))}
      </Rows>
    </DeskPage>
  );
};
