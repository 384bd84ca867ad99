import type { Judgement } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation, useParams } from "wouter";
import {
  Button,
  ButtonLink,
  Buttons,
  LeafWords,
  Page,
  PlaceHeading,
  pendingOf,
  printNumber,
  Rows,
  SendingMark,
  TitleBlock,
  unbroken,
  WordButton,
  WordLink,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { work } from "../messages/work.ts";
import { takeBack } from "../offline/outbox.ts";
import { clockTime } from "./day-words.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { NextDue, nextWindows } from "./fill-next-due.tsx";
import { newestIssue } from "./newest-issue.ts";
import { OverallMark } from "./overall-mark.tsx";
import { roundOf } from "./round-model.ts";
import { RoundRowView } from "./round-row.tsx";
import { BUNDLES_KEY, useBundles } from "./use-bundle.ts";
import { useOwnWork } from "./use-kept.ts";

/** The entry as it stands between this device and the server. */
const useWritten = (entry: string) => {
  const { database } = useDevice();
  return useQuery({
    queryKey: [...BUNDLES_KEY, "written", entry],
    queryFn: async () => ({
      waiting: await database.get("outbox", entry),
      sent: await database.get("sent", entry),
    }),
  });
};

const Sending = ({ entry }: { readonly entry: string }) => {
  const { connection } = useDevice();
  const written = useWritten(entry).data;
  if (!written) return null;
  const { waiting, sent } = written;
  if (sent) {
    return (
      <p>
        <SendingMark state="sent" /> {work("written.sent", { seq: printNumber(sent.seq) })}
      </p>
    );
  }
  if (waiting?.state === "refused") {
    return (
      <p className="danger">
        <SendingMark state="refused" /> {work("written.refused")}
      </p>
    );
  }
  if (connection.sending) {
    return (
      <p>
        <SendingMark state="sending" /> {work("written.sending")}
      </p>
    );
  }
  if (connection.signedOut) {
    return (
      <p>
        <SendingMark state="waiting" /> {work("written.signed-out")}{" "}
        <WordLink href="/sign-in">{w("state.sign-in")}</WordLink>
      </p>
    );
  }
  const others = Math.max(0, connection.waiting - 1);
  return (
    <p>
      <SendingMark state="waiting" />{" "}
      {others > 0 ? work("written.waits-with", { count: others }) : work("written.waits")}
    </p>
  );
};

/** After an entry is written: where it is, what is due next, and the next asset of the walk. */
export const WrittenPage = () => {
  const { entry = "" } = useParams<{ entry: string }>();
  const { database, settings, now, connection } = useDevice();
  const [, navigate] = useLocation();
  const [gone, setGone] = useState(false);
  const bundles = useBundles().data ?? [];
  const own = useOwnWork().data;
  const written = useWritten(entry).data;
  // Kept on the page after it was sent: the outbox no longer has it.
  const [first, setFirst] = useState<typeof written>();
  if (!first && written?.waiting) setFirst(written);
  const signed = (written?.waiting ?? first?.waiting)?.signed;
  const asset = bundles
    .flatMap((row) => row.bundle.assets)
    .find((one) => one.id === signed?.entry.asset);
  const bundle = bundles.find(
    (row) => row.bundle.site.id === (asset?.site ?? settings.site),
  )?.bundle;
  const today = bundle && todayAt(bundle.site.zone, now(), settings.clockOffset);
  const round = bundle && own && today !== undefined && roundOf({ bundle, ...own }, today);
  const left = round
    ? round.all.filter((one) => one.state === "to-do" || one.state === "unfinished")
    : [];
  const [next] = left;
  const nextIssue = next && bundle && newestIssue(bundle.checklists, next.due.checklist);
  const at = signed?.entry.happenedAt ?? new Date(now()).toISOString();
  const judgement =
    signed?.entry.kind === "inspection"
      ? (signed.entry.body.judgement as unknown as Judgement)
      : null;
  const windows =
    judgement && asset && bundle && today !== undefined && signed?.entry.kind === "inspection"
      ? nextWindows(bundle, {
          asset,
          checklist: signed.entry.body.checklist.id,
          judgement,
          today,
          at: Date.parse(at),
        })
      : [];
  const fails = judgement
    ? Object.values(judgement.points).filter((point) => point.verdict === "fail").length
    : 0;
  const pending = judgement ? pendingOf(judgement).length : 0;
  const undo = async () => {
    const draft = written?.waiting?.draft;
    if (draft && (await takeBack(database, entry))) {
      await connection.refresh();
      navigate(`/fill/${draft.asset}/${draft.checklistHash}`, { replace: true });
    } else setGone(true);
  };
  return (
    <Page
      dock={
        <Buttons>
          <Button kind="secondary" onClick={() => navigate("/")}>
            {work("written.round")}
          </Button>
          {next && nextIssue && (
            <ButtonLink
              kind="primary"
              href={`/fill/${next.asset.id}/${nextIssue.hash}`}
              onFollow={navigate}
            >
              {work("written.open", { number: next.asset.number })}
            </ButtonLink>
          )}
        </Buttons>
      }
    >
      <TitleBlock
        number={asset?.number}
        title={
          (asset && unbroken(asset.description)) ?? work("written.title", { time: clockTime(at) })
        }
        size="fill"
        actions={
          <WordLink href="/" onFollow={navigate}>
            {work("fill.leave")}
          </WordLink>
        }
      />
      <LeafWords>
        <h2 className="written-title">{work("written.title", { time: clockTime(at) })}</h2>
        <div aria-live="polite">
          <Sending entry={entry} />
        </div>
        {judgement && (
          <p>
            <OverallMark judgement={judgement} />
          </p>
        )}
        {pending > 0 && <p>{work("written.pending", { count: pending })}</p>}
        {fails > 0 && <p>{work("written.defect", { count: fails })}</p>}
        {written?.waiting?.draft && written.waiting.state !== "refused" && (
          <WordButton onClick={() => void undo()}>{work("written.take-back")}</WordButton>
        )}
        {gone && <p role="status">{work("written.gone")}</p>}
      </LeafWords>
      {windows.length > 0 && today !== undefined && (
        <section>
          <PlaceHeading title={work("written.next-due")} />
          <NextDue windows={windows} today={today} />
        </section>
      )}
      {left.length > 0 && bundle && today !== undefined && (
        <section>
          <PlaceHeading
            title={work("written.next")}
            aside={work("written.to-go", { count: left.length })}
          />
          <Rows>
            {left.slice(0, 2).map((row) => (
              <RoundRowView key={row.key} {...{ row, bundle, today }} onFollow={navigate} />
            ))}
          </Rows>
        </section>
      )}
    </Page>
  );
};
