import { formatCivilDate } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { useLocation, useParams, useSearch } from "wouter";
import {
  ChecklistForm,
  Empty,
  type FinishedFilling,
  LeafWords,
  Loading,
  longDay,
  Page,
  PlaceHeading,
  StateLine,
  TitleBlock,
  unbroken,
  WordButton,
  WordLink,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { work } from "../messages/work.ts";
import type { Draft, PaperDraft } from "../offline/database.ts";
import { draftKey } from "../offline/drafts.ts";
import { clockTime } from "./day-words.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { NextDue, nextWindows } from "./fill-next-due.tsx";
import { doneOnOf, NEW_PAPER, PaperAsk, PaperLine } from "./fill-paper.tsx";
import { LanguageChoice } from "./language-choice.tsx";
import { NotCompletedSheet } from "./not-completed-sheet.tsx";
import { type ToFill, useToFill } from "./use-fill.ts";
import { Unkept, useKeeper } from "./use-keeper.tsx";
import { usePhotoDoor } from "./use-photo-door.ts";
import { useWrite } from "./use-write.ts";
import { inspectionBody } from "./write-inspection.ts";

export const FillPage = () => {
  const { asset = "", checklistHash = "" } = useParams<{ asset: string; checklistHash: string }>();
  const { person } = useDevice();
  const [, navigate] = useLocation();
  const found = useToFill(asset, checklistHash);
  const back = (
    <WordLink href="/" onFollow={navigate}>
      {work("fill.round")}
    </WordLink>
  );
  if (found.isPending) {
    return (
      <Page>
        <Loading label={w("app.opening")} />
      </Page>
    );
  }
  if (!found.data || person.role === "auditor") {
    return (
      <Page>
        <TitleBlock title={w("app.round")} actions={back} />
        <Empty sentence={work(found.data ? "fill.auditor" : "fill.unknown")} actions={back}>
          {!found.data && <p>{work("fill.unknown-next")}</p>}
        </Empty>
      </Page>
    );
  }
  return <Filling key={`${asset}:${checklistHash}`} given={found.data} />;
};

const freshDraft = (given: ToFill, person: string, now: number): Draft => ({
  key: draftKey(given.asset.id, given.issue.hash),
  asset: given.asset.id,
  site: given.bundle.site.id,
  checklistHash: given.issue.hash,
  person,
  startedAt: now,
  changedAt: now,
  answers: {},
  evidence: {},
  declared: [],
  cautionsAt: null,
  waits: {},
});

const Filling = ({ given }: { readonly given: ToFill }) => {
  const { now, settings, changeSettings, person } = useDevice();
  const { asset, bundle, issue } = given;
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const write = useWrite();
  const { keeper, keeping } = useKeeper();
  const photos = usePhotoDoor();
  const [attempting, setAttempting] = useState(false);
  const [start] = useState(() => given.draft ?? freshDraft(given, person.id, now()));
  const draft = useRef(start);
  const language = settings.language ?? undefined;
  const onLanguage = (chosen: string) => changeSettings({ language: chosen });
  const today = todayAt(bundle.site.zone, now(), settings.clockOffset);
  const asked = new URLSearchParams(useSearch()).has("paper") ? NEW_PAPER : undefined;
  const [onPaper, setOnPaper] = useState(start.paper ?? asked);
  const [asking, setAsking] = useState(false);
  const doneOn = onPaper && doneOnOf(onPaper, today);
  const day = doneOn ?? today;

  const keepDraft = (change: Partial<Draft>) => {
    draft.current = { ...draft.current, ...change, person: person.id, changedAt: now() };
    keeper.change(draft.current);
  };
  const finish = async (finished: FinishedFilling) => {
    const kept = { ...draft.current, ...finished, judgement: undefined };
    await keeper.flush();
    await keeper.end();
    try {
      const { body, contents } = await inspectionBody(given, finished, draft.current, now());
      const { judgement: _, ...back } = kept;
      const entry = await write({
        made: { kind: "inspection", body },
        asset: asset.id,
        contents,
        zone: bundle.site.zone,
        summary: {
          number: asset.number,
          description: asset.description,
          words: issue.document.title,
          overall: finished.judgement.overall,
        },
        draft: back,
        ...(doneOn === undefined ? {} : { doneOn: formatCivilDate(doneOn) }),
      });
      queries.removeQueries({ queryKey: ["to-fill", asset.id] });
      void navigator.storage?.persist?.();
      navigate(`/written/${entry}`, { replace: true });
    } catch (error) {
      keeper.resume();
      throw error;
    }
  };
  const openDefects = Object.fromEntries(
    Object.entries(given.openDefects).map(([point, number]) => [
      point,
      work("fill.open-defect", { number }),
    ]),
  );
  const title = (
    <TitleBlock
      number={asset.number}
      title={unbroken(asset.description)}
      second={work("fill.issue", { title: issue.document.title, issue: issue.issue })}
      size="fill"
      actions={
        <WordLink href="/" onFollow={navigate}>
          {work("fill.leave")}
        </WordLink>
      }
    />
  );
  if (onPaper && (doneOn === undefined || asking)) {
    const given = (said: PaperDraft) => {
      setOnPaper(said);
      setAsking(false);
      keepDraft({ paper: said });
    };
    return <PaperAsk given={onPaper} {...{ today, photos, title }} onGiven={given} />;
  }
  return (
    <ChecklistForm
      document={issue.document}
      issue={issue.issue}
      particulars={asset.particulars}
      initialAnswers={draft.current.answers}
      initialEvidence={draft.current.evidence}
      initialDeclared={draft.current.declared}
      initialWaits={draft.current.waits}
      language={language}
      previous={given.previous}
      previousAnswers={given.previousAnswers}
      now={now}
      on={formatCivilDate(day)}
      signer={person.name}
      openDefects={openDefects}
      cautionsRead={draft.current.cautionsAt !== null}
      onCautionsRead={() => keepDraft({ cautionsAt: now() })}
      onAnswersChange={keepDraft}
      onFinish={finish}
      nextDue={(judgement) => {
        const windows = nextWindows(bundle, {
          asset,
          checklist: issue.id,
          judgement,
          today: day,
          at: now(),
        });
        return windows.length > 0 ? <NextDue windows={windows} today={today} /> : undefined;
      }}
      signature={
        <>
          <PlaceHeading title={work("fill.signature")} />
          <LeafWords>
            <p className="written">{person.name}</p>
            <p className="second">
              {work("fill.signs", {
                name: person.name,
                day: longDay(today),
                time: clockTime(new Date(now()).toISOString()),
              })}
            </p>
          </LeafWords>
        </>
      }
      clock={() => clockTime(new Date(now()).toISOString())}
      leftHanded={settings.hand === "left"}
      {...photos}
      frame={({ page, dock }) => (
        <Page dock={dock}>
          {title}
          {onPaper && doneOn !== undefined && (
            <PaperLine given={onPaper} day={doneOn} onChange={() => setAsking(true)} />
          )}
          <Unkept {...{ keeper, keeping }} />
          {asset.status !== "in-service" && (
            <StateLine>{work("fill.status", { number: asset.number })}</StateLine>
          )}
          <LanguageChoice document={issue.document} {...{ language, onLanguage }} />
          {page}
          <LeafWords>
            <WordButton quiet onClick={() => setAttempting(true)}>
              {work("fill.not-completed")}
            </WordButton>
          </LeafWords>
          {attempting && (
            <NotCompletedSheet
              given={given}
              onClose={() => setAttempting(false)}
              onWritten={(entry) => navigate(`/written/${entry}`, { replace: true })}
            />
          )}
        </Page>
      )}
    />
  );
};
