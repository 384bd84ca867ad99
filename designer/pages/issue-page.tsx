import {
  AreaField,
  Button,
  LeafWords,
  Loading,
  PlaceHeading,
  Row,
  Rows,
  TitleBlock,
  useMessages,
  WordLink,
} from "@roundbook/runner/form";
import type { ChecklistRow, DraftRow, Problem } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useMemo, useState } from "react";
import { useLocation, useParams } from "wouter";
import { NotAChecklist } from "../editor/json-sheet.tsx";
import { isWarning, placeNumber, pointOf, titleAt } from "../editor/problem-place.ts";
import { useEngine, useProblems } from "../editor/use-problems.ts";
import { useWhole } from "../editor/use-whole.ts";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { type Change, differences } from "../model/difference.ts";
import type { DraftDocument } from "../model/draft-document.ts";
import { includedBlocks } from "../model/include-edit.ts";
import { asDraft } from "../model/read-document.ts";
import { getJson, sendJson } from "./client.ts";
import { DeskPage } from "./desk-page.tsx";
import { useChecklists, useIssues } from "./queries.ts";
import { useSession } from "./session.tsx";
import { useRefused } from "./use-refused.tsx";

export const IssuePage = () => {
  const { id = "" } = useParams<{ id: string }>();
  const draft = useQuery({
    queryKey: ["draft-to-issue", id],
    queryFn: () => getJson<DraftRow>(`/api/drafts/${id}`),
    staleTime: 0,
    gcTime: 0,
  });
  const checklists = useChecklists();
  const read = draft.data && asDraft(draft.data.document);
  if (!draft.data || !checklists.data || !read?.ok) {
    return (
      <DeskPage current="checklists">
        {draft.isError ? (
          <LeafWords>{e("ed.gone")}</LeafWords>
        ) : read && !read.ok ? (
          <LeafWords>
            <p>{e("ed.unreadable")}</p>
            <NotAChecklist problems={read.problems} />
          </LeafWords>
        ) : (
          <Loading label={d("app.opening")} />
        )}
      </DeskPage>
    );
  }
  const newest = checklists.data.find((one) => one.id === id);
  return <Issue row={draft.data} newest={newest} />;
};

const Changes = ({
  newest,
  changes,
  document,
}: {
  readonly newest: ChecklistRow;
  readonly changes: readonly Change[];
  readonly document: DraftDocument;
}) => {
  return (
    <section>
      <PlaceHeading title={e("issue.changes")} aside={String(changes.length)} />
      {changes.length === 0 && (
        <LeafWords>
          <p>{e("issue.no-changes", { issue: newest.issue })}</p>
        </LeafWords>
      )}
      <Rows>
        {changes.map((change, at) => (
          <Row
            // Two points may be called the same, and one may change in several ways.
            key={`${at} ${change.kind}`}
            name={
              change.kind === "gone" ? (
                <del>{change.about}</del>
              ) : change.kind === "added" ? (
                <span className="written">{change.about}</span>
              ) : (
                change.about
              )
            }
            number={placeNumber(document, change.point)}
            second={change.was && <del>{change.was}</del>}
            more={change.is && <span className="written">{change.is}</span>}
            due={e(`diff.${change.kind}`)}
          />
        ))}
      </Rows>
    </section>
  );
};

const ProblemRows = ({
  title,
  problems,
  document,
  back,
}: {
  readonly title: string;
  /** The draft's own page. */
  readonly back: string;
  readonly problems: readonly Problem[];
  readonly document: DraftDocument;
}) => {
  const { say } = useMessages();
  const [, navigate] = useLocation();
  const at = (problem: Problem) => {
    const point = pointOf(document, problem);
    return point === null ? "" : `?at=${point}`;
  };
  if (problems.length === 0) return null;
  return (
    <section>
      <PlaceHeading title={title} aside={String(problems.length)} />
      <Rows>
        {problems.map((problem) => (
          <Row
            key={problem.pointer + problem.code}
            number={placeNumber(document, pointOf(document, problem) ?? undefined)}
            name={titleAt(document, problem) ?? document.title}
            second={say(problem)}
            href={`/designer${back}${at(problem)}`}
            onFollow={() => navigate(back + at(problem))}
          />
        ))}
      </Rows>
    </section>
  );
};

const Issue = ({ row, newest }: { row: DraftRow; newest: ChecklistRow | undefined }) => {
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { person } = useSession();
  const { refused, guard } = useRefused();
  const [reason, setReason] = useState("");
  const [working, setWorking] = useState(false);
  const draft = row.document as unknown as DraftDocument;
  const { whole, revisions: seen } = useWhole(draft);
  const allSeen = includedBlocks(draft).every((name) => Object.hasOwn(seen, name));
  const { document } = whole;
  const engine = useEngine(document);
  const problems = useProblems(whole, engine, row.problems, useIssues(row.checklist).data);
  const standing = problems.filter((one) => !isWarning(one));
  const warnings = problems.filter(isWarning);
  const issue = row.lastIssue + 1;
  const changes = useMemo(
    () => (newest ? differences(newest.document, document) : []),
    [newest, document],
  );
  // What was withdrawn may be issued again as it was.
  const nothingNew = newest?.status === "issued" && changes.length === 0;
  const back = `/draft/${row.checklist}`;
  const go = () =>
    guard(async () => {
      setWorking(true);
      try {
        const issued = await sendJson<{ hash: string }>(
          "POST",
          `/api/drafts/${row.checklist}/issue`,
          {
            revision: row.revision,
            blocks: seen,
            ...(reason.trim() === "" ? {} : { reason: reason.trim() }),
          },
        );
        await queries.invalidateQueries({ queryKey: ["drafts"] });
        await queries.invalidateQueries({ queryKey: ["checklists"] });
        navigate(`/checklist/${issued.hash}`, { replace: true });
      } finally {
        // Where a block was changed meanwhile, its new points are shown before it is tried again.
        await queries.invalidateQueries({ queryKey: ["blocks"] });
        setWorking(false);
      }
    });
  return (
    <DeskPage current="checklists">
      <TitleBlock
        number={String(issue)}
        title={document.title}
        second={newest ? e("issue.replaces", { issue: newest.issue }) : e("issue.first")}
        actionsAbove
        actions={
          <WordLink href={`/designer${back}`} onFollow={() => navigate(back)}>
            {e("issue.back")}
          </WordLink>
        }
      />
      <ProblemRows title={e("issue.stands")} problems={standing} {...{ document, back }} />
      <ProblemRows title={e("issue.look")} problems={warnings} {...{ document, back }} />
      {newest && <Changes {...{ newest, changes, document }} />}
      <section>
        <PlaceHeading title={e("issue.title", { issue })} />
        <LeafWords>
          <AreaField
            label={e("issue.why")}
            value={reason}
            maxLength={1000}
            onChange={(event) => setReason(event.target.value)}
          />
          <p className="second">{e("issue.final", { next: issue + 1 })}</p>
          <p className="second">{e("issue.caution")}</p>
          {refused}
          <p>
            <Button
              kind="primary"
              disabled={standing.length > 0 || nothingNew || working || !allSeen}
              onClick={() => void go()}
            >
              {e("issue.go", { issue })}
            </Button>{" "}
            <span className="second">{e("issue.as", { name: person.name })}</span>
          </p>
        </LeafWords>
      </section>
    </DeskPage>
  );
};
