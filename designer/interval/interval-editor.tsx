import {
  LeafWords,
  PlaceHeading,
  StateLine,
  TitleBlock,
  WordButton,
  WordList,
} from "@roundbook/runner/form";
import type {
  AssetTypeRow,
  ChecklistRow,
  IntervalDates,
  IntervalDraftRow,
  IntervalEffect,
  IntervalRow,
} from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useMemo, useState } from "react";
import { useLocation } from "wouter";
import { OpeningProvider } from "../editor/desk.tsx";
import { useUndoKeys } from "../editor/use-undo-keys.ts";
import { iv } from "../messages/intervals.ts";
import { beginInterval, civilToday, lacking } from "../model/interval-draft.ts";
import { sendJson } from "../pages/client.ts";
import { DeskPage, NarrowOnly } from "../pages/desk-page.tsx";
import { NextDates } from "../pages/next-dates.tsx";
import { useRefused } from "../pages/use-refused.tsx";
import { Effect } from "./effect.tsx";
import { type IntervalDesk, IntervalProvider } from "./interval-desk.tsx";
import { IntervalPanel } from "./interval-panel.tsx";
import { PutInForce } from "./put-in-force.tsx";
import type { Told } from "./told.ts";
import { useIntervalDraft } from "./use-interval-draft.ts";
import { useIntervalProblems } from "./use-interval-problems.ts";
import { usePreview } from "./use-preview.ts";

export interface IntervalEditorProps {
  readonly id: string;
  readonly row: IntervalRow | undefined;
  readonly kept: IntervalDraftRow | undefined;
  readonly told: Told;
  readonly onTold: (told: Told) => void;
  readonly types: readonly AssetTypeRow[];
  readonly checklists: readonly ChecklistRow[];
  readonly intervals: readonly IntervalRow[];
}

/** An open book: how the interval runs, and on the facing page what it makes of a real asset. */
export const IntervalEditor = (props: IntervalEditorProps) => {
  const { id, row, kept, told, onTold, types, checklists, intervals } = props;
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const [today] = useState(() => civilToday(new Date()));
  const work = useIntervalDraft(id, row?.definition ?? beginInterval(), kept, { today });
  const { draft } = work;
  // What this page was opened on: somebody else may put another in force meanwhile.
  const [over, setOver] = useState(() => row?.progress?.definition ?? row?.definition);
  const [open, setOpen] = useState<string | null>(null);
  const [turned, setTurned] = useState(false);
  const [asset, setAsset] = useState<{ type: string; id: string }>();
  const [busy, setBusy] = useState(false);
  const { refused, guard } = useRefused();
  useUndoKeys(work.undo, work.redo);

  const lacks = lacking(draft);
  // A name is not needed to try it, but to put it in force.
  const unsaid = [...(draft.title === "" ? ["/title"] : []), ...lacks];
  const definition = lacks.length > 0 ? null : { ...draft, title: draft.title || "…" };
  const named = asset?.type === draft.assetType ? { asset: asset.id } : {};
  const dates = usePreview<IntervalDates>(
    "/api/intervals/dates",
    definition && { definition, ...named },
  );
  const effect = usePreview<IntervalEffect>(
    "/api/intervals/effect",
    definition && { definition, ...(row ? { interval: id } : {}) },
  );
  const served = effect.problems.length > 0 ? effect.problems : dates.problems;
  const problems = useIntervalProblems(
    draft,
    row ? id : null,
    { types, checklists, intervals },
    served,
  );
  const older = problems.length > 0 || lacks.length > 0;

  const desk = useMemo<IntervalDesk>(
    () => ({
      draft,
      id: row ? id : null,
      today,
      types,
      checklists,
      intervals,
      problems,
      apply: work.apply,
    }),
    [draft, row, id, today, types, checklists, intervals, problems, work.apply],
  );
  const opening = useMemo(() => ({ open, setOpen }), [open]);

  const run = (work_: () => Promise<void>) => {
    setBusy(true);
    onTold(null);
    void guard(work_).finally(() => setBusy(false));
  };
  const goOn = (to: string) => navigate(`/intervals/${to}`, { replace: true });
  const force = (reason: string) =>
    run(async () => {
      const body = { ...draft, reason, ...(over === undefined ? {} : { over }) };
      const reply = row
        ? await sendJson<undefined>("PUT", `/api/intervals/${id}`, body)
        : await sendJson<{ id: string }>("POST", "/api/intervals", body);
      setOver(draft);
      await work.putInForce();
      await queries.invalidateQueries({ queryKey: ["intervals"] });
      onTold("in-force");
      goOn(reply?.id ?? id);
    });
  const keep = (how: () => Promise<boolean>) =>
    run(async () => {
      if (!(await how())) return;
      onTold("kept");
      goOn(id);
    });
  const leaveWith = (remove: () => Promise<void>) =>
    run(async () => {
      await remove();
      await queries.invalidateQueries({ queryKey: ["intervals"] });
      navigate("/intervals");
    });

  const type = types.find(({ assetType }) => assetType === draft.assetType)?.title;
  const isDraft = kept !== undefined;
  const state = row ? (isDraft || work.changed ? "page.changed" : "page.in-force") : "page.draft";
  const forWhom =
    type === undefined
      ? iv("page.for-none")
      : effect.reply
        ? iv("page.for-count", { type, count: effect.reply.assets })
        : iv("page.for", { type });
  const notKept = work.changed ? ` ${iv("page.not-kept")}` : "";
  return (
    <IntervalProvider value={desk}>
      <OpeningProvider value={opening}>
        <DeskPage
          current="intervals"
          facing={
            <NextDates
              assetType={draft.assetType}
              preview={dates}
              older={older && dates.reply !== null}
              onAsset={(chosen) => setAsset({ type: draft.assetType, id: chosen })}
            />
          }
          turned={turned}
          onTurn={() => setTurned(false)}
        >
          <TitleBlock
            title={draft.title || iv("list.new")}
            second={`${forWhom} ${iv(state)}${notKept}`}
            actionsAbove
            actions={
              <>
                <WordButton disabled={!work.canUndo} onClick={work.undo}>
                  {iv("page.undo")}
                </WordButton>
                <WordButton disabled={!work.canRedo} onClick={work.redo}>
                  {iv("page.redo")}
                </WordButton>
                <NarrowOnly>
                  <WordButton onClick={() => setTurned(true)}>{iv("dates.title")}</WordButton>
                </NarrowOnly>
              </>
            }
          />
          {told === "kept" && !work.changed && <StateLine>{iv("force.kept")}</StateLine>}
          {told === "in-force" && !row?.progress && <StateLine>{iv("force.done")}</StateLine>}
          {row?.progress && (
            <StateLine>
              {iv("force.progress", { done: row.progress.done, of: row.progress.of })}
            </StateLine>
          )}
          {work.theirs && (
            <StateLine>
              {iv("force.conflict")}
              <WordList>
                <WordButton onClick={work.takeTheirs}>{iv("force.theirs")}</WordButton>
                <WordButton onClick={() => keep(work.keepMine)}>{iv("force.mine")}</WordButton>
              </WordList>
            </StateLine>
          )}
          <PlaceHeading title={iv("page.how")} />
          <IntervalPanel />
          <Effect preview={effect} older={older && effect.reply !== null} />
          {unsaid.length > 0 && (
            <LeafWords>
              <p className="second">
                {unsaid.map((one) => iv(`lack.${one}` as "lack./title")).join(" ")}
              </p>
            </LeafWords>
          )}
          <PutInForce
            standing={problems.length + unsaid.length}
            {...{ busy, refused, isDraft }}
            isRunning={row !== undefined}
            onForce={force}
            onKeep={() => keep(work.keep)}
            onDiscard={() => leaveWith(work.discard)}
            onEnd={() => leaveWith(() => sendJson("DELETE", `/api/intervals/${id}`))}
          />
        </DeskPage>
      </OpeningProvider>
    </IntervalProvider>
  );
};
