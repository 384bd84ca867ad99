import { formatCivilDate } from "@roundbook/schemas";
import { useQueryClient } from "@tanstack/react-query";
import { useEffect, useMemo, useRef, useState } from "react";
import { useLocation, useParams } from "wouter";
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
import { keep } from "../messages/keep.ts";
import { w } from "../messages/page.ts";
import { work } from "../messages/work.ts";
import type { Draft } from "../offline/database.ts";
import { draftKey } from "../offline/drafts.ts";
import { keepPhoto, loadPhoto } from "../offline/evidence.ts";
import { clockTime } from "./day-words.ts";
import { useDevice } from "./device.tsx";
import { DraftKeeper, type Keeping } from "./draft-keeper.ts";
import { todayAt } from "./due-of.tsx";
import { NextDue, nextWindows } from "./fill-next-due.tsx";
import { LanguageChoice } from "./language-choice.tsx";
import { NotCompletedSheet } from "./not-completed-sheet.tsx";
import { saveUnsent } from "./save-unsent.ts";
import { type ToFill, useToFill } from "./use-fill.ts";
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

/** Keeps the draft of this page, whatever happens to the page. */
const useKeeper = () => {
  const { database, now } = useDevice();
  const keeper = useMemo(() => new DraftKeeper(database, now), [database, now]);
  const [keeping, setKeeping] = useState<Keeping>("kept");
  useEffect(() => {
    keeper.onKeeping = setKeeping;
    const flush = () => void keeper.flush();
    document.addEventListener("visibilitychange", flush);
    window.addEventListener("pagehide", flush);
    document.addEventListener("focusout", flush);
    return () => {
      flush();
      document.removeEventListener("visibilitychange", flush);
      window.removeEventListener("pagehide", flush);
      document.removeEventListener("focusout", flush);
    };
  }, [keeper]);
  return { keeper, keeping };
};

/** What the device could not keep is said at once, with what can be done about it. */
const Unkept = ({ keeper, keeping }: ReturnType<typeof useKeeper>) => {
  const { database, now } = useDevice();
  if (keeping === "kept") return null;
  return (
    <StateLine>
      <span role="alert">{keep(`keep.${keeping}`)}</span>{" "}
      <WordButton onClick={() => void keeper.flush()}>{keep("keep.again")}</WordButton>{" "}
      <WordButton onClick={() => void saveUnsent(database, now(), keeper.unkept)}>
        {keep("keep.save")}
      </WordButton>
    </StateLine>
  );
};

/** Addresses of kept photos, given back when the page is left. */
const usePhotos = () => {
  const { database, now } = useDevice();
  const urls = useRef(new Map<string, string>());
  useEffect(() => {
    const made = urls.current;
    return () => {
      for (const url of made.values()) URL.revokeObjectURL(url);
      made.clear();
    };
  }, []);
  return useMemo(
    () => ({
      keepPhoto: async (blob: Blob) => ({ sha256: await keepPhoto(database, blob, now()) }),
      photoUrl: async (sha256: string) => {
        const made = urls.current.get(sha256);
        if (made) return made;
        const blob = await loadPhoto(database, sha256);
        if (!blob) return undefined;
        const url = URL.createObjectURL(blob);
        urls.current.set(sha256, url);
        return url;
      },
    }),
    [database, now],
  );
};

const Filling = ({ given }: { readonly given: ToFill }) => {
  const { now, settings, changeSettings, person } = useDevice();
  const { asset, bundle, issue } = given;
  const [, navigate] = useLocation();
  const queries = useQueryClient();
  const write = useWrite();
  const { keeper, keeping } = useKeeper();
  const photos = usePhotos();
  const [attempting, setAttempting] = useState(false);
  const [start] = useState(() => given.draft ?? freshDraft(given, person.id, now()));
  const draft = useRef(start);
  const language = settings.language ?? undefined;
  const onLanguage = (chosen: string) => changeSettings({ language: chosen });
  const today = todayAt(bundle.site.zone, now(), settings.clockOffset);

  const keepDraft = (change: Partial<Draft>) => {
    draft.current = { ...draft.current, ...change, person: person.id, changedAt: now() };
    keeper.change(draft.current);
  };
  const finish = async (finished: FinishedFilling) => {
    const kept = { ...draft.current, ...finished, judgement: undefined };
    await keeper.flush();
    await keeper.end();
    try {
      const { body, contents } = await inspectionBody(given, finished, draft.current);
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
  return (
    <ChecklistForm
      document={issue.document}
      issue={issue.issue}
      particulars={asset.particulars}
      initialAnswers={start.answers}
      initialEvidence={start.evidence}
      initialDeclared={start.declared}
      initialWaits={start.waits}
      language={language}
      previous={given.previous}
      previousAnswers={given.previousAnswers}
      now={now}
      on={formatCivilDate(today)}
      signer={person.name}
      openDefects={openDefects}
      cautionsRead={start.cautionsAt !== null}
      onCautionsRead={() => keepDraft({ cautionsAt: now() })}
      onAnswersChange={keepDraft}
      onFinish={finish}
      nextDue={(judgement) => {
        const windows = nextWindows(bundle, {
          asset,
          checklist: issue.id,
          judgement,
          today,
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
