import {
  Empty,
  LeafWords,
  Loading,
  StateLine,
  TitleBlock,
  useMessages,
  useWide,
  WordButton,
  WordLink,
  WordList,
} from "@roundbook/runner/form";
import type { DraftRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useCallback, useMemo, useRef, useState } from "react";
import { useLocation, useParams } from "wouter";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { asDraft } from "../model/read-document.ts";
import { getJson, sendJson } from "../pages/client.ts";
import { DeskPage, NarrowOnly } from "../pages/desk-page.tsx";
import { useIssues } from "../pages/queries.ts";
import { useRefused } from "../pages/use-refused.tsx";
import { AroundSentences } from "./around-sentences.tsx";
import { DeskProvider, type EditorDesk } from "./desk.tsx";
import { Footnotes } from "./footnotes.tsx";
import { JsonSheet, NotAChecklist } from "./json-sheet.tsx";
import { PointList } from "./point-list.tsx";
import { isWarning, placeOf } from "./problem-place.ts";
import { Trial } from "./trial.tsx";
import { type Keeping, useDraft } from "./use-draft.ts";
import { useEngine, useProblems } from "./use-problems.ts";
import { useUndoKeys } from "./use-undo-keys.ts";
import { useWhole } from "./use-whole.ts";

export const EditorPage = () => {
  const { id = "" } = useParams<{ id: string }>();
  const [, navigate] = useLocation();
  const draft = useQuery({
    queryKey: ["draft", id],
    queryFn: () => getJson<DraftRow>(`/api/drafts/${id}`),
    // The editor keeps its own state; a refetch would not change it.
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  });
  const read = draft.data && asDraft(draft.data.document);
  // What stands open stays open, whatever is kept of it meanwhile.
  const shown = useRef(false);
  shown.current ||= read?.ok === true;
  if (draft.data && shown.current) return <Editor key={id} row={draft.data} />;
  return (
    <DeskPage current="checklists">
      <TitleBlock title={d("list.title")} />
      {draft.isPending ? (
        <Loading label={d("app.opening")} />
      ) : (
        <Empty
          sentence={e(read ? "ed.unreadable" : "ed.gone")}
          actions={
            <WordLink href="/designer/" onFollow={() => navigate("/")}>
              {d("list.title")}
            </WordLink>
          }
        >
          {read && !read.ok && <NotAChecklist problems={read.problems} />}
        </Empty>
      )}
    </DeskPage>
  );
};

const keptWords = (keeping: Keeping, lastIssue: number): string => {
  const issue = lastIssue + 1;
  switch (keeping.state) {
    case "kept": {
      const at = new Date(keeping.at);
      const time = `${String(at.getHours()).padStart(2, "0")}:${String(at.getMinutes()).padStart(2, "0")}`;
      return e("ed.kept", { issue, time });
    }
    case "keeping":
      return e("ed.keeping", { issue });
    case "away":
      return e("ed.not-kept", { why: d("app.away") });
    case "refused":
      return e("ed.not-kept-now");
    case "conflict":
      return e("ed.not-kept-now");
  }
};

const Editor = ({ row }: { readonly row: DraftRow }) => {
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { say } = useMessages();
  const issues = useIssues(row.checklist).data;
  const desk = useDraft(row);
  const { document, keeping } = desk;
  const { whole, blocks } = useWhole(document);
  const [opened, setOpened] = useState<string | null>(() =>
    new URLSearchParams(window.location.search).get("at"),
  );
  const [open, setOpen] = useState<string | null>(null);
  const [asJson, setAsJson] = useState(false);
  const [turned, setTurned] = useState(false);
  const [asked, setAsked] = useState(false);
  const { refused, guard } = useRefused();
  const engine = useEngine(whole.document, asked);
  const problems = useProblems(whole, engine, desk.served, issues);
  const footnoted = problems.map((problem, at) => ({ number: at + 1, problem }));
  const standing = problems.filter((one) => !isWarning(one)).length;
  useUndoKeys(desk.undo, desk.redo);
  const needEngine = useCallback(() => setAsked(true), []);
  const retired = useMemo(
    () =>
      new Set([
        ...(issues ?? []).flatMap((issue) => Object.keys(issue.document.properties)),
        ...Object.keys(whole.document.properties),
      ]),
    [issues, whole],
  );
  const wide = useWide();
  const json = <WordButton onClick={() => setAsJson(true)}>{e("ed.json")}</WordButton>;
  const editorDesk = useMemo<EditorDesk>(
    () => ({
      ...{ document, whole: whole.document, blocks, apply: desk.apply },
      ...{ open, setOpen, engine, needEngine, retired },
    }),
    [document, whole, blocks, desk.apply, open, engine, needEngine, retired],
  );
  const discard = () =>
    guard(async () => {
      await sendJson("DELETE", `/api/drafts/${row.checklist}`);
      await queries.invalidateQueries({ queryKey: ["drafts"] });
      navigate("/");
    });
  const toIssue = async () => {
    if (await desk.flush()) navigate(`/draft/${row.checklist}/issue`);
  };
  const keepCopy = () =>
    guard(async () => {
      const copy = await desk.keepCopy(e("ed.copy", { title: document.title }));
      navigate(`/draft/${copy}`);
    });
  return (
    <DeskProvider value={editorDesk}>
      <DeskPage
        current="checklists"
        facing={<Trial document={whole.document} at={opened ?? undefined} />}
        turned={turned}
        onTurn={() => setTurned(false)}
        dock={
          problems.length > 0 && (
            <Footnotes
              problems={footnoted}
              onGo={(point, blank) => {
                setOpened(point);
                setOpen(blank);
              }}
            />
          )
        }
      >
        <TitleBlock
          number={row.lastIssue > 0 ? String(row.lastIssue + 1) : undefined}
          title={document.title}
          second={
            <>
              {keptWords(keeping, row.lastIssue)}{" "}
              {standing > 0 ? e("ed.stand", { count: standing }) : e("ed.nothing-stands")}{" "}
              {problems.length > standing &&
                e("ed.worth-a-look", { count: problems.length - standing })}
            </>
          }
          actionsAbove
          actions={
            <>
              <WordButton disabled={desk.history.past.length === 0} onClick={desk.undo}>
                {e("ed.undo")}
              </WordButton>
              <WordButton disabled={desk.history.future.length === 0} onClick={desk.redo}>
                {e("ed.redo")}
              </WordButton>
              <NarrowOnly>
                <WordButton onClick={() => setTurned(true)}>{e("trial.open")}</WordButton>
              </NarrowOnly>
              {wide && json}
              <WordButton onClick={() => void toIssue()}>{e("ed.issue")}</WordButton>
            </>
          }
        />
        {keeping.state === "conflict" && (
          <StateLine>
            {e("ed.conflict")}
            <WordList>
              <WordButton onClick={desk.takeTheirs}>{e("ed.take-theirs")}</WordButton>
              <WordButton onClick={desk.keepMine}>{e("ed.keep-newest")}</WordButton>
              <WordButton onClick={() => void keepCopy()}>{e("ed.keep-mine")}</WordButton>
            </WordList>
          </StateLine>
        )}
        {keeping.state === "refused" && (
          <StateLine>
            {keeping.problems.length === 0 && say({ code: keeping.code, params: {} })}
            {keeping.problems.map((problem) => (
              <span key={problem.pointer + problem.code}>
                {placeOf(whole.document, problem)} {say(problem)}{" "}
              </span>
            ))}
          </StateLine>
        )}
        {refused && <LeafWords>{refused}</LeafWords>}
        {asJson && (
          <JsonSheet
            document={document}
            onTake={(next) => desk.apply(next)}
            onClose={() => setAsJson(false)}
          />
        )}
        <AroundSentences />
        <PointList opened={opened} onOpen={setOpened} problems={footnoted} />
        <div className="draft-end">
          {!wide && json}
          <Discard onDiscard={() => void discard()} />
        </div>
      </DeskPage>
    </DeskProvider>
  );
};

/** Asked twice: a draft thrown away cannot be had back. */
const Discard = ({ onDiscard }: { readonly onDiscard: () => void }) => {
  const [sure, setSure] = useState(false);
  return (
    <>
      <WordButton quiet onClick={sure ? onDiscard : () => setSure(true)}>
        {e(sure ? "ed.discard-sure" : "ed.discard")}
      </WordButton>
      {sure && (
        <WordButton quiet onClick={() => setSure(false)}>
          {e("ed.discard-not")}
        </WordButton>
      )}
    </>
  );
};
