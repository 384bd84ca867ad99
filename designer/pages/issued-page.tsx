import {
  AreaField,
  Button,
  Buttons,
  LeafWords,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  Sheet,
  TitleBlock,
  WordButton,
  WordLink,
} from "@roundbook/runner/form";
import type { BlockRow, ChecklistRow, DraftRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation, useParams } from "wouter";
import { Trial } from "../editor/trial.tsx";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { withIncludes } from "../model/whole.ts";
import { printDay } from "./checklists-page.tsx";
import { getJson, sendJson } from "./client.ts";
import { DeskPage, NarrowOnly } from "./desk-page.tsx";
import { IssuedDocument } from "./issued-document.tsx";
import { useDrafts, useIssues } from "./queries.ts";
import { useRefused } from "./use-refused.tsx";

/** Every issue of the checklist: the old ones stay, since results name them. */
const Issues = ({
  rows,
  shown,
}: {
  readonly rows: readonly ChecklistRow[];
  readonly shown: string;
}) => {
  const [, navigate] = useLocation();
  if (rows.length < 2) return null;
  return (
    <section>
      <PlaceHeading title={d("issued.issues")} aside={String(rows.length)} />
      <Rows>
        {rows.map((row) => (
          <Row
            key={row.issue}
            number={String(row.issue)}
            name={row.title}
            second={d("list.since", { day: printDay(row.issuedOn) })}
            due={row.hash === shown ? d("issued.shown") : undefined}
            href={`/designer/checklist/${row.hash}`}
            onFollow={() => navigate(`/checklist/${row.hash}`)}
          />
        ))}
      </Rows>
    </section>
  );
};

const WithdrawSheet = ({
  row,
  onClose,
}: {
  readonly row: ChecklistRow;
  readonly onClose: () => void;
}) => {
  const queries = useQueryClient();
  const [reason, setReason] = useState("");
  const { refused, guard } = useRefused();
  const withdraw = () =>
    guard(async () => {
      await sendJson("POST", `/api/checklists/${row.id}/withdraw`, { reason });
      await queries.invalidateQueries();
      onClose();
    });
  return (
    <Sheet title={d("issued.withdraw-go")} close={d("issued.close")} onClose={onClose}>
      <LeafWords>
        <AreaField
          label={d("issued.withdraw-why")}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        {refused}
      </LeafWords>
      <Buttons>
        <Button kind="primary" disabled={reason.trim() === ""} onClick={() => void withdraw()}>
          {d("issued.withdraw-go")}
        </Button>
      </Buttons>
    </Sheet>
  );
};

/** One issue as it was issued: it can be read, tried and followed, never changed. */
export const IssuedPage = () => {
  const { hash = "" } = useParams<{ hash: string }>();
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const [withdrawing, setWithdrawing] = useState(false);
  const [turned, setTurned] = useState(false);
  const { refused, guard } = useRefused();
  const issue = useQuery({
    queryKey: ["issue", hash],
    queryFn: () => getJson<ChecklistRow>(`/api/checklists/${hash}`),
  });
  const drafts = useDrafts();
  const row = issue.data;
  const issues = useIssues(row?.id).data ?? [];
  if (!row) {
    return (
      <DeskPage current="checklists">
        <TitleBlock title={d("list.title")} />
        {issue.isPending ? (
          <Loading label={d("app.opening")} />
        ) : (
          <LeafWords>{d("app.away")}</LeafWords>
        )}
      </DeskPage>
    );
  }
  const newest = issues[0]?.issue ?? row.issue;
  const draft = drafts.data?.find((one) => one.checklist === row.id);
  const blocks = async () =>
    (await getJson<{ rows: BlockRow[] }>("/api/blocks")).rows.map(({ block }) => block);
  const edit = () =>
    guard(async () => {
      if (!draft) {
        await sendJson<DraftRow>("POST", "/api/drafts", {
          checklist: row.id,
          document: withIncludes(row.document, await blocks()),
        });
        await queries.invalidateQueries({ queryKey: ["drafts"] });
      }
      navigate(`/draft/${row.id}`);
    });
  return (
    <DeskPage
      current="checklists"
      facing={<Trial document={row.document} issue={row.issue} />}
      turned={turned}
      onTurn={() => setTurned(false)}
    >
      <TitleBlock
        number={String(row.issue)}
        title={row.document.title}
        second={
          row.status === "withdrawn"
            ? d("issued.withdrawn")
            : newest > row.issue
              ? d("issued.newest", { issue: newest })
              : d("issued.about", { issue: row.issue, day: printDay(row.issuedOn) })
        }
        actionsAbove
        actions={
          <>
            {newest === row.issue && (
              <WordButton onClick={() => void edit()}>
                {draft ? d("issued.go-on") : d("issued.edit", { issue: row.issue + 1 })}
              </WordButton>
            )}
            <NarrowOnly>
              <WordButton onClick={() => setTurned(true)}>{e("trial.open")}</WordButton>
            </NarrowOnly>
            {row.status === "issued" && newest === row.issue && (
              <WordButton onClick={() => setWithdrawing(true)}>{d("issued.withdraw")}</WordButton>
            )}
          </>
        }
      />
      {withdrawing && <WithdrawSheet row={row} onClose={() => setWithdrawing(false)} />}
      <LeafWords>
        {refused}
        <p className="second">
          {d("issued.hash")} <span className="mono">{row.hash}</span>
        </p>
        {row.status === "issued" && (
          <WordLink href="/designer/asset-types" onFollow={() => navigate("/asset-types")}>
            {d("issued.types")}
          </WordLink>
        )}
      </LeafWords>
      <IssuedDocument document={row.document} />
      <Issues rows={issues} shown={row.hash} />
    </DeskPage>
  );
};
