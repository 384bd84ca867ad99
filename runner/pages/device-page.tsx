import type { Problem } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation } from "wouter";
import {
  deskEnglish,
  Facts,
  LeafWords,
  PlaceHeading,
  Row,
  Rows,
  Sending,
  TitleBlock,
  verdictWords,
  WordButton,
  WordLink,
  WordList,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { work } from "../messages/work.ts";
import type { OutboxRow } from "../offline/database.ts";
import { discardDraft } from "../offline/drafts.ts";
import { sendJson } from "../sync/client.ts";
import { clockTime } from "./day-words.ts";
import { useDevice } from "./device.tsx";
import { UnsentFile } from "./device-file.tsx";
import { ConnectionLine, RunnerPage } from "./runner-page.tsx";
import { useBundles } from "./use-bundle.ts";
import { useOwnWork } from "./use-kept.ts";

const ageOf = (from: number, now: number): string => {
  const minutes = Math.floor((now - from) / 60_000);
  if (minutes < 1) return work("device.age-now");
  if (minutes < 60) return work("device.minutes", { count: minutes });
  const hours = Math.floor(minutes / 60);
  if (hours < 48)
    return work("device.hours", { hours, minutes: String(minutes % 60).padStart(2, "0") });
  return work("device.days", { count: Math.floor(hours / 24) });
};

const wordsOf = (row: Pick<OutboxRow, "summary">): string => {
  const { words, overall } = row.summary;
  return overall ? `${words}. ${verdictWords(`verdict.${overall}` as "verdict.pass")}` : words;
};

const WhyRefused = ({ problems }: { readonly problems: readonly Problem[] }) => {
  return problems.map((problem) => (
    <span key={`${problem.pointer} ${problem.code}`} className="second">
      {deskEnglish.say(problem)}
    </span>
  ));
};

const WaitingRows = ({ rows }: { readonly rows: readonly OutboxRow[] }) => {
  const { now, connection } = useDevice();
  return (
    <Rows>
      {rows.map((row) => (
        <Row
          key={row.id}
          number={row.summary.number}
          name={row.summary.description}
          second={wordsOf(row)}
          more={row.problems.length > 0 && <WhyRefused problems={row.problems} />}
          due={
            <Sending
              state={
                row.state === "refused" ? "refused" : connection.sending ? "sending" : "waiting"
              }
              word={work(
                connection.sending && row.state !== "refused"
                  ? "device.state-sending"
                  : `device.state-${row.state}`,
              )}
              age={ageOf(row.madeAt, now())}
            />
          }
          href={`/written/${row.id}`}
        />
      ))}
    </Rows>
  );
};

const Unfinished = () => {
  const { database, now, connection } = useDevice();
  const [, navigate] = useLocation();
  const own = useOwnWork();
  const assets = (useBundles().data ?? []).flatMap((row) => row.bundle.assets);
  const [asked, setAsked] = useState<string>();
  const drafts = own.data?.drafts ?? [];
  if (drafts.length === 0) return null;
  return (
    <section>
      <PlaceHeading title={work("device.unfinished")} aside={String(drafts.length)} />
      <Rows>
        {drafts.map((draft) => {
          const asset = assets.find((one) => one.id === draft.asset);
          return (
            <Row
              key={draft.key}
              number={asset?.number ?? ""}
              name={asset?.description ?? draft.asset}
              second={work("device.answered", { count: Object.keys(draft.answers).length })}
              due={ageOf(draft.changedAt, now())}
              href={`/fill/${draft.asset}/${draft.checklistHash}`}
              onFollow={navigate}
            />
          );
        })}
      </Rows>
      <LeafWords>
        <WordList>
          {drafts.map((draft) => {
            const number = assets.find((one) => one.id === draft.asset)?.number ?? "";
            const discard = async () => {
              if (asked !== draft.key) return setAsked(draft.key);
              await discardDraft(database, draft.key);
              await connection.refresh();
            };
            return (
              <WordButton key={draft.key} quiet onClick={() => void discard()}>
                {number} {work(asked === draft.key ? "device.discard-sure" : "device.discard")}
              </WordButton>
            );
          })}
        </WordList>
      </LeafWords>
    </section>
  );
};

const KeptFacts = () => {
  const { settings, changeSettings } = useDevice();
  const bundles = useBundles().data ?? [];
  const persisted = useQuery({
    queryKey: ["persisted"],
    queryFn: async () => (await navigator.storage?.persisted?.()) ?? false,
  });
  const newest = Math.max(0, ...bundles.map((row) => row.fetchedAt));
  const seconds = Math.round(settings.clockOffset / 1000);
  const choose = <K extends "hand" | "ink">(
    key: K,
    options: readonly { value: (typeof settings)[K]; word: string }[],
  ) => (
    <WordList>
      {options.map(({ value, word }) => (
        <WordButton
          key={String(value)}
          chosen={settings[key] === value}
          onClick={() => void changeSettings({ [key]: value })}
        >
          {word}
        </WordButton>
      ))}
    </WordList>
  );
  return (
    <section>
      <PlaceHeading title={work("device.kept")} />
      <LeafWords>
        <Facts
          facts={[
            {
              name: work("device.register"),
              value:
                newest === 0
                  ? work("device.none")
                  : work("device.register-value", {
                      count: bundles.length,
                      time: clockTime(new Date(newest).toISOString()),
                    }),
            },
            {
              name: work("device.storage"),
              value: persisted.data ? (
                work("device.storage-kept")
              ) : (
                <>
                  {work("device.storage-may")}{" "}
                  <WordButton
                    onClick={() =>
                      void navigator.storage?.persist?.().then(() => persisted.refetch())
                    }
                  >
                    {work("device.storage-ask")}
                  </WordButton>
                </>
              ),
            },
            {
              name: work("device.clock"),
              value:
                Math.abs(seconds) < 2
                  ? work("device.clock-same")
                  : work(seconds > 0 ? "device.clock-behind" : "device.clock-ahead", {
                      seconds: Math.abs(seconds),
                    }),
            },
            {
              name: work("device.hand"),
              value: choose("hand", [
                { value: "right", word: work("device.right") },
                { value: "left", word: work("device.left") },
              ]),
            },
            {
              name: work("device.light"),
              value: choose("ink", [
                { value: "light", word: work("device.day") },
                { value: "dark", word: work("device.dark") },
                { value: "system", word: work("device.system") },
              ]),
            },
          ]}
        />
      </LeafWords>
    </section>
  );
};

/** What stands on this device and not yet in the logbook, and what it keeps of the book. */
export const DevicePage = () => {
  const { person, connection } = useDevice();
  const own = useOwnWork().data;
  const refused = own?.outbox.filter((row) => row.state === "refused") ?? [];
  const waiting = own?.outbox.filter((row) => row.state !== "refused") ?? [];
  const sent = [...(own?.sent ?? [])].sort((a, b) => b.sentAt - a.sentAt);
  const signOut = async () => {
    await sendJson("DELETE", "/api/session", undefined).catch(() => undefined);
    location.assign("/sign-in");
  };
  return (
    <RunnerPage current="device">
      <TitleBlock
        title={w("device.title")}
        second={work("device.second", { name: person.name })}
        actions={
          <WordLink
            href="/sign-in"
            onFollow={() => {
              void signOut();
            }}
          >
            {work("device.sign-out")}
          </WordLink>
        }
      />
      <ConnectionLine />
      {refused.length > 0 && (
        <section>
          <PlaceHeading title={work("device.refused")} aside={String(refused.length)} />
          <WaitingRows rows={refused} />
        </section>
      )}
      <section>
        <PlaceHeading title={work("device.waiting")} aside={String(waiting.length)} />
        {waiting.length === 0 && <LeafWords>{work("device.nothing-waits")}</LeafWords>}
        <WaitingRows rows={waiting} />
        {waiting.length > 0 && (
          <LeafWords>
            <WordButton onClick={() => void connection.refresh()}>{work("device.send")}</WordButton>
          </LeafWords>
        )}
      </section>
      <Unfinished />
      {sent.length > 0 && (
        <section>
          <PlaceHeading title={work("device.sent")} aside={String(sent.length)} />
          <Rows>
            {sent.map((row) => (
              <Row
                key={row.id}
                number={row.summary.number}
                name={row.summary.description}
                second={wordsOf(row)}
                due={
                  <Sending
                    state="sent"
                    word={work("device.state-sent")}
                    age={clockTime(new Date(row.sentAt).toISOString())}
                  />
                }
                href={row.asset ? `/asset/${row.asset}/entry/${row.id}` : undefined}
              />
            ))}
          </Rows>
        </section>
      )}
      <KeptFacts />
      <UnsentFile />
      <LeafWords>
        <p className="second">{work("device.sign-out-waits")}</p>
      </LeafWords>
    </RunnerPage>
  );
};
