import type { CivilDate, SiteBundle } from "@roundbook/schemas";
import { useState } from "react";
import { useLocation } from "wouter";
import {
  dayAndMonth,
  Empty,
  FoldedRow,
  Loading,
  longDay,
  PlaceHeading,
  Rows,
  ScanLine,
  StateLine,
  TitleBlock,
  useWide,
  Walk,
  WordLink,
} from "../form/index.ts";
import { w } from "../messages/page.ts";
import { useDevice } from "./device.tsx";
import { todayAt } from "./due-of.tsx";
import { newestIssue } from "./newest-issue.ts";
import { RoundMarginalia } from "./round-marginalia.tsx";
import { type Round, type RoundPlace, roundOf, strokesOf } from "./round-model.ts";
import { RoundRowView } from "./round-row.tsx";
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
  if (bundle && own.data) {
    const today = todayAt(bundle.site.zone, now(), settings.clockOffset);
    return <Walking {...{ bundle, today }} round={roundOf({ bundle, ...own.data }, today)} />;
  }
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

const toGo = (round: Round) =>
  round.all.filter((one) => one.state === "to-do" || one.state === "unfinished").length;

const minutesLeft = (round: Round, bundle: SiteBundle): string => {
  const minutes = round.all
    .filter((one) => one.state === "to-do" || one.state === "unfinished")
    .map((one) => newestIssue(bundle.checklists, one.due.checklist)?.document.minutes ?? 0)
    .reduce((sum, one) => sum + one, 0);
  if (minutes === 0) return "";
  const hours = Math.floor(minutes / 60);
  const rest = String(Math.round(minutes % 60)).padStart(2, "0");
  return w("round.minutes", {
    minutes: hours > 0 ? `${hours} h ${rest}` : `${Math.round(minutes)} min`,
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
  const { person, settings } = useDevice();
  const [, navigate] = useLocation();
  const wide = useWide();
  const [scanned, setScanned] = useState("");
  const [unknown, setUnknown] = useState<string>();
  const left = toGo(round);
  const done = round.all.filter((one) => one.state === "done").length;
  const attempts = round.all.filter((one) => one.state === "not-completed").length;

  /** A scanned or typed number opens what is due there, else the asset's page. */
  const open = () => {
    const asked = scanned.trim().toLowerCase();
    if (asked === "") return;
    const asset =
      bundle.assets.find((one) => one.number.toLowerCase() === asked) ??
      bundle.assets.find((one) => one.description.toLowerCase().includes(asked));
    if (!asset) {
      setUnknown(scanned.trim());
      return;
    }
    const due = round.all.find((one) => one.asset.id === asset.id && one.state !== "done");
    const issue = due && newestIssue(bundle.checklists, due.due.checklist);
    navigate(issue ? `/fill/${asset.id}/${issue.hash}` : `/asset/${asset.id}`);
  };
  const scan = (
    <ScanLine
      margin={w("round.no")}
      placeholder={w("round.scan")}
      value={scanned}
      onChange={(text) => {
        setScanned(text);
        setUnknown(undefined);
      }}
      onSubmit={open}
      inline={wide}
      leftHanded={settings.hand === "left"}
    />
  );
  return (
    <RunnerPage
      current="round"
      dock={wide ? undefined : scan}
      marginalia={<RoundMarginalia current={bundle.site.id} today={today} />}
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
        <Walk strokes={strokesOf(round, today)}>
          {left === 0 ? (
            <strong>{w("round.all-done")}</strong>
          ) : (
            <strong>{w("round.to-go", { count: left })}</strong>
          )}
          {minutesLeft(round, bundle)}.{w("round.done", { done })}
          {attempts > 0 && w("round.not-completed", { count: attempts })}.
        </Walk>
      )}
      {round.places.map((place) => (
        <PlaceOfRound key={`${place.place}:${place.rows[0]?.key}`} {...{ place, bundle, today }} />
      ))}
      {round.all.length === 0 && (
        <Empty
          sentence={
            round.nextDay === null
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
      {round.coming.length > 0 && <Coming {...{ bundle, today }} rows={round.coming} />}
    </RunnerPage>
  );
};

interface PartProps {
  readonly bundle: SiteBundle;
  readonly today: CivilDate;
}

const PlaceOfRound = ({ place, bundle, today }: PartProps & { readonly place: RoundPlace }) => {
  const [, navigate] = useLocation();
  const [open, setOpen] = useState(false);
  const done = place.rows.filter((row) => row.state === "done");
  const left = place.rows.filter((row) => row.state !== "done");
  return (
    <section>
      <PlaceHeading
        title={place.name}
        aside={w("round.of", { done: done.length, all: place.rows.length })}
      />
      <Rows>
        {left.map((row) => (
          <RoundRowView key={row.key} {...{ row, bundle, today }} onFollow={navigate} />
        ))}
        {done.length > 0 && (
          <FoldedRow
            margin={w("round.done-count", { count: done.length })}
            summary={done.map(({ asset }) => `${asset.number} ${asset.description}`).join(", ")}
            action={w("round.show")}
            open={open}
            onToggle={() => setOpen(!open)}
          >
            <Rows>
              {done.map((row) => (
                <RoundRowView key={row.key} {...{ row, bundle, today }} onFollow={navigate} />
              ))}
            </Rows>
          </FoldedRow>
        )}
      </Rows>
    </section>
  );
};

const Coming = ({ rows, bundle, today }: PartProps & { readonly rows: Round["coming"] }) => {
  const [, navigate] = useLocation();
  const [open, setOpen] = useState(false);
  return (
    <section>
      <PlaceHeading title={w("round.coming")} aside={String(rows.length)} />
      <Rows>
        <FoldedRow
          margin={String(rows.length)}
          summary={rows
            .slice(0, 4)
            .map(({ asset }) => `${asset.number} ${asset.description}`)
            .join(", ")}
          action={w("round.show")}
          open={open}
          onToggle={() => setOpen(!open)}
        >
          <Rows>
            {rows.map((row) => (
              <RoundRowView key={row.key} {...{ row, bundle, today }} onFollow={navigate} />
            ))}
          </Rows>
        </FoldedRow>
      </Rows>
    </section>
  );
};
