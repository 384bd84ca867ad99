import {
  Empty,
  Loading,
  Problems,
  StateLine,
  TitleBlock,
  useMessages,
  WordButton,
  WordLink,
} from "@roundbook/runner/form";
import type { DraftRow } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useEffect, useMemo, useState } from "react";
import { useLocation, useParams } from "wouter";
import { d } from "../messages/desk.ts";
import { e } from "../messages/editor.ts";
import { getJson, sendJson } from "../pages/client.ts";
import { DeskPage } from "../pages/desk-page.tsx";
import { AroundSentences } from "./around-sentences.tsx";
import { DeskProvider, type EditorDesk } from "./desk.tsx";
import { JsonSheet } from "./json-sheet.tsx";
import { PointList } from "./point-list.tsx";
import { isWarning, pointOf } from "./problem-place.ts";
import { Trial } from "./trial.tsx";
import { type DraftDesk, type Keeping, useDraft } from "./use-draft.ts";
import { useEngine, useProblems } from "./use-problems.ts";

const FOOTNOTES_SHOWN = 4;

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
  if (draft.data) return <Editor key={id} row={draft.data} />;
  return (
    <DeskPage current="checklists">
      <TitleBlock title={d("list.title")} />
      {draft.isPending ? (
        <Loading label={d("app.opening")} />
      ) : (
        <Empty
          sentence={e("ed.gone")}
          actions={
            <WordLink href="/designer/" onFollow={() => navigate("/")}>
              {d("list.title")}
            </WordLink>
          }
        />
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
      return e("ed.not-kept", { why: "" });
    case "conflict":
      return e("ed.conflict");
  }
};

/** Ctrl Z and Ctrl Y anywhere but in a field, where they are the field's own. */
const useUndoKeys = (desk: DraftDesk) => {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey)) return;
      if (event.target instanceof Element && event.target.matches("input, textarea")) return;
      const key = event.key.toLowerCase();
      if (key === "z" && !event.shiftKey) desk.undo();
      else if (key === "y" || (key === "z" && event.shiftKey)) desk.redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [desk]);
};

const Editor = ({ row }: { readonly row: DraftRow }) => {
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const { say } = useMessages();
  const desk = useDraft(row);
  const { document, keeping } = desk;
  const [opened, setOpened] = useState<string | null>(null);
  const [open, setOpen] = useState<string | null>(null);
  const [asJson, setAsJson] = useState(false);
  const [sure, setSure] = useState(false);
  const engine = useEngine(document);
  const problems = useProblems(document, engine, keeping.state === "kept" ? desk.served : []);
  const standing = problems.filter((one) => !isWarning(one)).length;
  useUndoKeys(desk);
  const editorDesk = useMemo<EditorDesk>(
    () => ({ document, apply: desk.apply, open, setOpen, engine }),
    [document, desk.apply, open, engine],
  );
  const discard = async () => {
    if (!sure) return setSure(true);
    await sendJson("DELETE", `/api/drafts/${row.checklist}`);
    await queries.invalidateQueries({ queryKey: ["drafts"] });
    navigate("/");
  };
  const goTo = (name: string | null) => {
    setOpened(name);
    requestAnimationFrame(() =>
      window.document.getElementById(`point-${name}`)?.scrollIntoView({ block: "start" }),
    );
  };
  return (
    <DeskProvider value={editorDesk}>
      <DeskPage
        current="checklists"
        facing={<Trial document={document} />}
        dock={
          problems.length > 0 && (
            <Problems
              label={e("ed.problems")}
              footnotes={problems.slice(0, FOOTNOTES_SHOWN).map((problem, at) => {
                const name = pointOf(document, problem);
                return {
                  number: at + 1,
                  says: say(problem),
                  right: name === null ? undefined : document.properties[name]?.title,
                  actions: name !== null && (
                    <WordButton onClick={() => goTo(name)}>{e("ed.go-there")}</WordButton>
                  ),
                };
              })}
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
              {standing > 0 ? e("ed.stand", { count: standing }) : e("ed.nothing-stands")}
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
              <WordButton onClick={() => setAsJson(true)}>{e("ed.json")}</WordButton>
              <WordButton
                onClick={() =>
                  void desk.flush().then(() => navigate(`/draft/${row.checklist}/issue`))
                }
              >
                {e("ed.issue")}
              </WordButton>
            </>
          }
        />
        {keeping.state === "conflict" && (
          <StateLine>
            {e("ed.conflict")}{" "}
            <WordButton onClick={desk.takeTheirs}>{e("ed.take-theirs")}</WordButton>{" "}
            <WordButton onClick={desk.keepMine}>{e("ed.keep-mine")}</WordButton>
          </StateLine>
        )}
        {keeping.state === "refused" && (
          <StateLine>
            {keeping.problems.map((problem) => (
              <span key={problem.pointer + problem.code}>{say(problem)} </span>
            ))}
          </StateLine>
        )}
        {asJson && (
          <JsonSheet
            document={document}
            onTake={(next) => desk.apply(next)}
            onClose={() => setAsJson(false)}
          />
        )}
        <AroundSentences />
        <PointList opened={opened} onOpen={setOpened} problems={problems} />
        <div className="draft-end">
          <WordButton quiet onClick={() => void discard()}>
            {e(sure ? "ed.discard-sure" : "ed.discard")}
          </WordButton>
        </div>
      </DeskPage>
    </DeskProvider>
  );
};
