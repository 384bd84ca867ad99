import {
  LeafWords,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  StateLine,
  TitleBlock,
  useMessages,
  WordLink,
  whyWords,
} from "@roundbook/runner/form";
import type { AssetRow, DueRow, OverrideRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation, useParams } from "wouter";
import { aw } from "../messages/asset.ts";
import { d } from "../messages/desk.ts";
import { pl } from "../messages/plan.ts";
import { civilToday } from "../model/interval-draft.ts";
import { AssetParticulars } from "./asset-particulars.tsx";
import { AssetRule } from "./asset-rule.tsx";
import { CannotRead } from "./cannot-read.tsx";
import { getJson } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { DueStanding, dayOf } from "./due-standing.tsx";
import { useAssetTypes, useIntervals } from "./queries.ts";

interface AssetReply {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly overrides: readonly OverrideRow[];
}

/** One asset at the desk: its dates and why, a rule of its own, its particulars. */
export const AssetPage = () => {
  const { id = "" } = useParams<{ id: string }>();
  const [, navigate] = useLocation();
  const messages = useMessages();
  const queries = useQueryClient();
  const [open, setOpen] = useState<string>();
  const [written, setWritten] = useState(false);
  const intervals = useIntervals().data ?? [];
  const types = useAssetTypes().data;
  const reply = useQuery({
    queryKey: ["asset", id],
    queryFn: () => getJson<AssetReply>(`/api/assets/${id}`),
  });
  if (!reply.data || !types)
    return (
      <DeskPage current="estate">
        {reply.isError ? (
          <CannotRead error={reply.error} onAgain={() => void reply.refetch()} />
        ) : (
          <Loading label={d("app.opening")} />
        )}
      </DeskPage>
    );
  const { asset, due, overrides } = reply.data;
  const today = dayOf(civilToday(new Date()));
  const done = async () => {
    await queries.invalidateQueries();
    setOpen(undefined);
    setWritten(true);
  };
  const chosen = intervals.find((one) => one.id === open);
  const type = types.find(({ assetType }) => assetType === asset.assetType);
  return (
    <DeskPage current="estate">
      <TitleBlock
        number={asset.number}
        actionsAbove
        title={asset.description}
        second={asset.path.join(" › ")}
        actions={
          <>
            <WordLink href={`/asset/${asset.id}`}>{aw("asset.history")}</WordLink>
            <WordLink href="/designer/due" onFollow={() => navigate("/due")}>
              {pl("due.title")}
            </WordLink>
          </>
        }
      />
      {written && <StateLine>{aw("asset.written")}</StateLine>}
      <section>
        <PlaceHeading title={aw("asset.due")} />
        {due.length === 0 && (
          <LeafWords>
            <p>{aw("asset.no-due")}</p>
          </LeafWords>
        )}
        <Rows>
          {due.map((row) => (
            <Row
              key={row.interval}
              name={row.intervalTitle}
              second={whyWords(messages, row.why, today)}
              due={<DueStanding row={row} today={today} />}
              onPress={() => {
                setWritten(false);
                setOpen(open === row.interval ? undefined : row.interval);
              }}
            />
          ))}
        </Rows>
        {chosen && (
          <AssetRule
            key={chosen.id}
            asset={asset.id}
            interval={chosen}
            override={overrides.find((one) => one.interval === chosen.id)}
            onDone={done}
          />
        )}
      </section>
      {type && (
        <AssetParticulars
          key={JSON.stringify(asset.particulars)}
          asset={asset}
          type={type}
          onDone={done}
        />
      )}
    </DeskPage>
  );
};
