import {
  durationWords,
  Empty,
  Loading,
  Row,
  Rows,
  TitleBlock,
  useMessages,
  WordLink,
} from "@roundbook/runner/form";
import type { IntervalRow } from "@roundbook/schemas";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { DeskPage } from "./desk-page.tsx";
import { useAssetTypes, useIntervals } from "./queries.ts";

const useSentence = () => {
  const { t } = useMessages();
  return ({ definition: { rule } }: IntervalRow): string =>
    rule.kind === "from-last-done"
      ? d("intervals.sentence", { every: durationWords(t, rule.every) })
      : d("intervals.sentence-result", { score: rule.score });
};

export const IntervalsPage = () => {
  const [, navigate] = useLocation();
  const intervals = useIntervals();
  const types = useAssetTypes();
  const sentence = useSentence();
  const add = (
    <WordLink href="/designer/intervals/new" onFollow={() => navigate("/intervals/new")}>
      {d("intervals.new")}
    </WordLink>
  );
  return (
    <DeskPage current="intervals">
      <TitleBlock title={d("intervals.title")} actions={add} />
      {intervals.isPending && <Loading label={d("app.opening")} />}
      {intervals.data?.length === 0 && (
        <Empty sentence={d("intervals.empty")} actions={add}>
          <p>{d("intervals.empty-next")}</p>
        </Empty>
      )}
      <Rows>
        {intervals.data?.map((row) => (
          <Row
            key={row.id}
            name={row.definition.title}
            second={sentence(row)}
            due={types.data?.find((one) => one.assetType === row.definition.assetType)?.title}
            href={`/designer/intervals/${row.id}`}
            onFollow={() => navigate(`/intervals/${row.id}`)}
          />
        ))}
      </Rows>
    </DeskPage>
  );
};
