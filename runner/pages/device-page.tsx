import type { Problem } from "@roundbook/schemas";
import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useLocation } from "wouter";
import {
  english,
  Facts,
  LeafWords,
  PlaceHeading,
  Row,
  Rows,
  Sending,
  TitleBlock,
  useMessages,
  WordButton,
  WordLink,
  WordList,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import type { OutboxRow } from "../offline/database.ts";
import { discardDraft } from "../offline/drafts.ts";
import { sendJson } from "../sync/client.ts";
import { useDevice } from "./device.tsx";
import { clockTime } from "./entry-words.tsx";
import { ConnectionLine, RunnerPage } from "./runner-page.tsx";
import { saveUnsent } from "./save-unsent.ts";
import { useBundles } from "./use-bundle.ts";
import { useOwnWork } from "./use-kept.ts";

const ageOf = (from: number, now: number): string => {
  const minutes = Math.floor((now - from) / 60_000);
  if (minutes < 1) return w("device.age-now");
  if (minutes < 60) return w("device.minutes", { count: minutes });
  const hours = Math.floor(minutes / 60);
  if (hours < 48)
    return w("device.hours", { hours, minutes: String(minutes % 60).padStart(2, "0") });
  return w("device.days", { count: Math.floor(hours / 24) });
};

const wordsOf = (row: Pick<OutboxRow, "summary">): string => {
  const { words, overall } = row.summary;
  return overall ? `${words}. ${english.t(`verdict.${overall}` as "verdict.pass")}` : words;
};

const WhyRefused = ({ problems }: { readonly problems: readonly Problem[] }) => {
  const { say } = useMessages();
  return problems.map((problem) => (
    <span key={`${problem.pointer} ${problem.code}`} className="second">
      {say(problem)}
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
              word={w(
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
      <PlaceHeading title={w("device.unfinished")} aside={String(drafts.length)} />
      <Rows>
        {drafts.map((draft) => {
          const asset = assets.find((one) => one.id === draft.asset);
          return (
            <Row
              key={draft.key}
              number={asset?.number ?? ""}
              name={asset?.description ?? draft.asset}
              second={w("device.answered", { count: Object.keys(draft.answers).length })}
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
                {number} {w(asked === draft.key ? "device.discard-sure" : "device.discard")}
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
  ) =>
    options.map(({ value, word }) => (
      <WordButton
        key={String(value)}
        chosen={settings[key] === value}
        onClick={() => void changeSettings({ [key]: value })}
      >
        {word}
      </WordButton>
    ));
  return (
    <section>
      <PlaceHeading title={w("device.kept")} />
      <LeafWords>
        <Facts
          facts={[
            {
              name: w("device.register"),
              value:
                newest === 0
                  ? w("device.none")
                  : w("device.register-value", {
                      count: bundles.length,
                      time: clockTime(new Date(newest).toISOString()),
                    }),
            },
            {
              name: w("device.storage"),
              value: persisted.data ? (
                w("device.storage-kept")
              ) : (
                <>
                  {w("device.storage-may")}{" "}
                  <WordButton
                    onClick={() =>
                      void navigator.storage?.persist?.().then(() => persisted.refetch())
                    }
                  >
                    {w("device.storage-ask")}
                  </WordButton>
                </>
              ),
            },
            {
              name: w("device.clock"),
              value:
                Math.abs(seconds) < 2
                  ? w("device.clock-same")
                  : w(seconds > 0 ? "device.clock-behind" : "device.clock-ahead", {
                      seconds: Math.abs(seconds),
                    }),
            },
            {
              name: w("device.hand"),
              value: choose("hand", [
                { value: "right", word: w("device.right") },
                { value: "left", word: w("device.left") },
              ]),
            },
            {
              name: w("device.light"),
              value: choose("ink", [
                { value: "light", word: w("device.day") },
                { value: "dark", word: w("device.dark") },
                { value: "system", word: w("device.system") },
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
  const { database, person, connection, now } = useDevice();
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
        second={w("device.second", { name: person.name })}
        actions={
          <WordLink
            href="/sign-in"
            onFollow={() => {
              void signOut();
            }}
          >
            {w("device.sign-out")}
          </WordLink>
        }
      />
      <ConnectionLine />
      {refused.length > 0 && (
        <section>
          <PlaceHeading title={w("device.refused")} aside={String(refused.length)} />
          <WaitingRows rows={refused} />
        </section>
      )}
      <section>
        <PlaceHeading title={w("device.waiting")} aside={String(waiting.length)} />
        {waiting.length === 0 && <LeafWords>{w("device.nothing-waits")}</LeafWords>}
        <WaitingRows rows={waiting} />
        {waiting.length > 0 && (
          <LeafWords>
            <WordButton onClick={() => void connection.refresh()}>{w("device.send")}</WordButton>
          </LeafWords>
        )}
      </section>
      <Unfinished />
      {sent.length > 0 && (
        <section>
          <PlaceHeading title={w("device.sent")} aside={String(sent.length)} />
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
                    word={w("device.state-sent")}
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
      <LeafWords>
        <WordButton onClick={() => void saveUnsent(database, now())}>{w("device.save")}</WordButton>
        <p className="second">{w("device.sign-out-waits")}</p>
      </LeafWords>
    </RunnerPage>
  );
};
