import type { CivilDate, SiteBundle } from "@roundbook/schemas";
import { useMemo, useState } from "react";
import { useLocation } from "wouter";
import {
  dayAndMonth,
  Empty,
  Loading,
  longDay,
  ScanLine,
  StateLine,
  TitleBlock,
  useWide,
  Walk,
  WordLink,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { useWedge } from "../scan/use-wedge.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { newestIssue } from "./newest-issue.ts";
import { RoundMarginalia } from "./round-marginalia.tsx";
import { type Round, type RoundRow, roundOf, strokesOf, toGoOf, walkPart } from "./round-model.ts";
import { Coming, Excused, PlacesOfRound } from "./round-parts.tsx";
import { ConnectionLine, RunnerPage } from "./runner-page.tsx";
import { useBundle } from "./use-bundle.ts";
import { useOwnWork } from "./use-kept.ts";

/** What is due at the chosen site, in walking order. */
export const RoundPage = () => {
  const { settings, now } = useDevice();
  const [, navigate] = useLocation();
  const row = useBundle(settings.site);
  const own = useOwnWork();
  const bundle = row.data?.bundle;
  const today = bundle && todayAt(bundle.site.zone, now(), settings.clockOffset);
  const round = useMemo(
    () => bundle && own.data && today && roundOf({ bundle, ...own.data }, today),
    [bundle, own.data, today],
  );
  if (bundle && today && round) return <Walking {...{ bundle, today, round }} />;
  return (
    <RunnerPage current="round">
      <TitleBlock title={w("app.round")} />
      <ConnectionLine />
      {settings.site === null ? (
        <Empty
          sentence={w("round.no-site")}
          actions={
            <WordLink href="/sites" onFollow={navigate}>
              {w("sites.choose")}
            </WordLink>
          }
        />
      ) : (
        <Loading label={w("round.fetching")} />
      )}
    </RunnerPage>
  );
};

const minutesLeft = (left: readonly RoundRow[]): string => {
  const minutes = Math.round(left.reduce((sum, { due }) => sum + due.minutes, 0));
  if (minutes === 0) return "";
  const hours = Math.floor(minutes / 60);
  const rest = String(minutes % 60).padStart(2, "0");
  return w("round.minutes", {
    minutes: hours > 0 ? `${hours}\u00a0h\u00a0${rest}` : `${minutes}\u00a0min`,
  });
};

const Walking = ({
  bundle,
  round,
  today,
}: {
  readonly bundle: SiteBundle;
  readonly round: Round;
  readonly today: CivilDate;
}) => {
  const { person, settings, now } = useDevice();
  const [, navigate] = useLocation();
  const wide = useWide();
  const [scanned, setScanned] = useState("");
  const [unknown, setUnknown] = useState<string>();
  const left = toGoOf(round);
  const walk = useMemo(() => walkPart(strokesOf(round, today)), [round, today]);
  const done = round.all.filter((one) => one.state === "done").length;
  const attempts = round.all.filter((one) => one.state === "not-completed").length;

  /** Opens what is due at an asset, else the asset's page. */
  const open = (asset: SiteBundle["assets"][number] | undefined, asked: string) => {
    if (!asset) {
      setUnknown(asked);
      return;
    }
    const due = round.all.find((one) => one.asset.id === asset.id && one.state !== "done");
    const issue = due && newestIssue(bundle.checklists, due.due.checklist);
    navigate(issue ? `/fill/${asset.id}/${issue.hash}` : `/asset/${asset.id}`);
  };
  const numbered = (asked: string) =>
    bundle.assets.find((one) => one.number.toLowerCase() === asked.toLowerCase());
  /** A typed number or name. */
  const openTyped = () => {
    const asked = scanned.trim();
    if (asked === "") return;
    const named = (one: SiteBundle["assets"][number]) =>
      one.description.toLowerCase().includes(asked.toLowerCase());
    open(numbered(asked) ?? bundle.assets.find(named), asked);
  };
  // A scanned code is a whole number: part of a name would open the wrong asset.
  useWedge(now, (code) => {
    setScanned(code);
    setUnknown(undefined);
    open(numbered(code), code);
  });
  const scan = (
    <ScanLine
      margin={w("round.no")}
      placeholder={w("round.scan")}
      value={scanned}
      onChange={(text) => {
        setScanned(text);
        setUnknown(undefined);
      }}
      onSubmit={openTyped}
      inline={wide}
      leftHanded={settings.hand === "left"}
    />
  );
  return (
    <RunnerPage
      current="round"
      dock={wide ? undefined : scan}
      marginalia={<RoundMarginalia {...{ bundle, round, today }} />}
    >
      <TitleBlock
        number={bundle.site.code}
        title={bundle.site.name}
        second={w("round.second", { day: longDay(today), name: person.name })}
        actions={
          <WordLink href="/sites" onFollow={navigate}>
            {w("round.sites")}
          </WordLink>
        }
      />
      <ConnectionLine />
      {unknown !== undefined && <StateLine>{w("round.no-number", { number: unknown })}</StateLine>}
      {wide && scan}
      {round.all.length > 0 && (
        <Walk strokes={walk.strokes}>
          {left.length === 0 ? (
            <strong>{w("round.all-done")}</strong>
          ) : (
            <strong>{w("round.to-go", { count: left.length })}</strong>
          )}
          {minutesLeft(left)}.{w("round.done", { done })}
          {attempts > 0 && w("round.not-completed", { count: attempts })}.
          {walk.strokes.length < round.all.length &&
            w("round.drawn", { from: walk.from + 1, to: walk.from + walk.strokes.length })}
        </Walk>
      )}
      <PlacesOfRound {...{ bundle, today }} places={round.places} />
      {round.all.length === 0 && (
        <Empty
          sentence={
            round.excused.length > 0
              ? w("round.excused-plain", { count: round.excused.length })
              : round.nextDay === null
                ? w("round.nothing-ever")
                : w("round.nothing", { day: dayAndMonth(round.nextDay, today) })
          }
          actions={
            <WordLink href="/register" onFollow={navigate}>
              {w("round.to-register")}
            </WordLink>
          }
        >
          <p>{w("round.nothing-next")}</p>
        </Empty>
      )}
      {round.excused.length > 0 && <Excused {...{ today }} rows={round.excused} />}
      {round.coming.length > 0 && <Coming {...{ bundle, today }} rows={round.coming} />}
    </RunnerPage>
  );
};
