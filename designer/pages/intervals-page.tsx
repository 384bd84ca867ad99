import { Empty, Loading, Row, Rows, TitleBlock, WordLink } from "@roundbook/runner/form";
import { useLocation } from "wouter";
import { d } from "../messages/desk.ts";
import { DeskPage } from "./desk-page.tsx";
import { useIntervalSentence } from "./interval-sentence.ts";
import { useAssetTypes, useIntervals } from "./queries.ts";

export const IntervalsPage = () => {
  const [, navigate] = useLocation();
  const intervals = useIntervals();
  const types = useAssetTypes();
  const sentence = useIntervalSentence();
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
            second={sentence(row.definition)}
            due={types.data?.find((one) => one.assetType === row.definition.assetType)?.title}
            href={`/designer/intervals/${row.id}`}
            onFollow={() => navigate(`/intervals/${row.id}`)}
          />
        ))}
      </Rows>
    </DeskPage>
  );
};
