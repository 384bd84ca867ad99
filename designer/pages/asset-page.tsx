import {
  DueMark,
  dueWords,
  Empty,
  LeafWords,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  StateLine,
  TitleBlock,
  useMessages,
  WordButton,
  WordLink,
  whyWords,
} from "@roundbook/runner/form";
import {
  type AssetRow,
  type CivilDate,
  type DueRow,
  NO_DATE,
  type OverrideRow,
  parseCivilDate,
} from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation, useParams } from "wouter";
import { aw } from "../messages/asset.ts";
import { d } from "../messages/desk.ts";
import { pl } from "../messages/plan.ts";
import { civilToday } from "../model/interval-draft.ts";
import { AssetParticulars } from "./asset-particulars.tsx";
import { AssetRule } from "./asset-rule.tsx";
import { getJson } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { useAssetTypes, useIntervals } from "./queries.ts";

/** What cannot be told has no day on its mark. */
const UNKNOWN = { earliest: null, due: null, latest: null } as const;

interface AssetReply {
  readonly asset: AssetRow;
  readonly due: readonly DueRow[];
  readonly overrides: readonly OverrideRow[];
}

const dayOf = (iso: string): CivilDate => parseCivilDate(iso) ?? (0 as CivilDate);

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
          <Empty
            sentence={d("app.away")}
            actions={<WordButton onClick={() => void reply.refetch()}>{d("app.again")}</WordButton>}
          />
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
  const type = types.find(({ assetType }) => assetType === asset.assetType);
  return (
    <DeskPage current="estate">
      <TitleBlock
        number={asset.number}
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
          {due.map((row) => {
            const window = {
              earliest: dayOf(row.earliest),
              due: dayOf(row.due),
              latest: dayOf(row.latest),
            };
            const undecided = row.status === "undecided";
            const dated = window.due < NO_DATE && !undecided;
            return (
              <Row
                key={row.interval}
                name={row.intervalTitle}
                second={whyWords(messages, row.why, today)}
                due={
                  <span className="due-lines">
                    <span>{pl(`status.${row.status}`)}</span>
                    {dated && <span>{dueWords(window, today)}</span>}
                    {dated && <DueMark {...window} today={today} />}
                    {undecided && <DueMark {...UNKNOWN} today={today} />}
                  </span>
                }
                onPress={() => {
                  setWritten(false);
                  setOpen(open === row.interval ? undefined : row.interval);
                }}
              />
            );
          })}
        </Rows>
        {due
          .filter((row) => row.interval === open)
          .map((row) => (
            <AssetRule
              key={row.interval}
              asset={asset.id}
              title={row.intervalTitle}
              interval={intervals.find((one) => one.id === row.interval)}
              override={overrides.find((one) => one.interval === row.interval)}
              onDone={done}
            />
          ))}
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
