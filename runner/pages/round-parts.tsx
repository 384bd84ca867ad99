import type { CivilDate, SiteBundle } from "@roundbook/schemas";
import { type CSSProperties, memo, useMemo, useRef, useState } from "react";
import { useLocation } from "wouter";
import { dayAndMonth, FoldedRow, PlaceHeading, Row, Rows, unbroken } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { DueOf, dayOf } from "./due-of.tsx";
import type { Round, RoundPlace, RoundRow } from "./round-model.ts";
import { RoundRowView } from "./round-row.tsx";
import { useGrowing } from "./use-growing.ts";
import { useNear } from "./use-near.ts";

interface PartProps {
  readonly bundle: SiteBundle;
  readonly today: CivilDate;
}

const leftIn = ({ rows }: RoundPlace): number => rows.filter(isLeft).length;
const isLeft = (row: RoundRow): boolean => row.state !== "done";

/** All places in walking order; those further down are drawn bit by bit. */
export const PlacesOfRound = ({
  places,
  bundle,
  today,
}: PartProps & { readonly places: readonly RoundPlace[] }) => {
  const ends = useMemo(() => {
    let sum = 0;
    return places.map((place) => {
      sum += leftIn(place);
      return sum;
    });
  }, [places]);
  const drawn = useGrowing(ends.at(-1) ?? 0);
  return places.map((place, at) => {
    const before = ends[at - 1] ?? 0;
    const all = (ends[at] ?? 0) - before;
    return (
      <PlaceOfRound
        key={`${place.place}:${place.rows[0]?.key}`}
        {...{ place, bundle, today }}
        drawn={Math.max(0, Math.min(all, drawn - before))}
      />
    );
  });
};

/** As many rows as are laid out together when they come near the screen. */
const A_STRETCH = 6;

const stretchesOf = (rows: readonly RoundRow[]): readonly (readonly RoundRow[])[] =>
  Array.from({ length: Math.ceil(rows.length / A_STRETCH) }, (_, at) =>
    rows.slice(at * A_STRETCH, (at + 1) * A_STRETCH),
  );

/** What is due in one place, what is done there folded into a line. */
const PlaceOfRound = memo(function PlaceOfRound({
  place,
  bundle,
  today,
  drawn,
}: PartProps & { readonly place: RoundPlace; readonly drawn: number }) {
  const [, navigate] = useLocation();
  const [open, setOpen] = useState(false);
  const done = place.rows.filter((row) => !isLeft(row));
  const stretches = useMemo(() => stretchesOf(place.rows.filter(isLeft)), [place]);
  return (
    <section>
      <PlaceHeading
        title={place.name}
        aside={w("round.of", { done: done.length, all: place.rows.length })}
      />
      {stretches.map((rows, at) => (
        <Stretch
          key={rows[0]?.key}
          {...{ rows, bundle, today }}
          isDrawn={at * A_STRETCH < drawn}
          onFollow={navigate}
        />
      ))}
      {done.length > 0 && (
        <Rows>
          <FoldedRow
            margin={w("round.done-count", { count: done.length })}
            summary={done.map(({ asset }) => `${asset.number} ${asset.description}`).join(", ")}
            action={w(open ? "round.hide" : "round.show")}
            open={open}
            onToggle={() => setOpen(!open)}
          >
            <Rows>
              {done.map((row) => (
                <RoundRowView key={row.key} {...{ row, bundle, today }} onFollow={navigate} />
              ))}
            </Rows>
          </FoldedRow>
        </Rows>
      )}
    </section>
  );
});

/** Some rows of a place, drawn when their turn has come or they are nearly seen. */
const Stretch = memo(function Stretch({
  rows,
  bundle,
  today,
  isDrawn,
  onFollow,
}: PartProps & {
  readonly rows: readonly RoundRow[];
  readonly isDrawn: boolean;
  readonly onFollow: (href: string) => void;
}) {
  const toCome = useRef<HTMLDivElement>(null);
  const isNear = useNear(toCome);
  const lines = { "--lines": rows.length } as CSSProperties;
  if (!isDrawn && !isNear) return <div ref={toCome} className="stretch-to-come" style={lines} />;
  return (
    <div className="stretch" style={lines}>
      <Rows>
        {rows.map((row) => (
          <RoundRowView key={row.key} {...{ row, bundle, today, onFollow }} />
        ))}
      </Rows>
    </div>
  );
});

/** Windows that open within the coming week. */
export const Coming = ({ rows, bundle, today }: PartProps & { readonly rows: Round["coming"] }) => {
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
          action={w(open ? "round.hide" : "round.show")}
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

const until = (row: RoundRow): string => row.due.closure?.reopens ?? "";
const closedFor = (row: RoundRow): string | undefined => {
  const said = row.due.why.moved?.find(({ code }) => code === "excused-while-closed");
  return typeof said?.params.reason === "string" ? said.params.reason : undefined;
};

/** Not expected while closed: counted apart, a line for each day of reopening. */
export const Excused = ({
  rows,
  today,
}: Pick<PartProps, "today"> & { readonly rows: readonly RoundRow[] }) => {
  const days = [...new Set(rows.map(until))].sort();
  return (
    <section>
      <PlaceHeading title={w("round.excused-title")} aside={String(rows.length)} />
      <Rows>
        {days.map((day) => (
          <ExcusedUntil
            key={day}
            {...{ day, today }}
            rows={rows.filter((row) => until(row) === day)}
          />
        ))}
      </Rows>
    </section>
  );
};

const ExcusedUntil = ({
  day,
  rows,
  today,
}: Pick<PartProps, "today"> & { readonly day: string; readonly rows: readonly RoundRow[] }) => {
  const [, navigate] = useLocation();
  const [open, setOpen] = useState(false);
  const reasons = [...new Set(rows.flatMap((row) => closedFor(row) ?? []))];
  return (
    <FoldedRow
      margin={w("round.excused-count", { count: rows.length })}
      summary={[
        w("round.excused", { day: day === "" ? "" : dayAndMonth(dayOf(day), today) }),
        reasons.join(", "),
      ]
        .filter(Boolean)
        .join(": ")}
      action={w(open ? "round.hide" : "round.show")}
      open={open}
      onToggle={() => setOpen(!open)}
    >
      {rows.map(({ key, asset, due }) => (
        <Row
          key={key}
          number={asset.number}
          name={unbroken(asset.description)}
          second={due.intervalTitle}
          due={<DueOf {...{ asset, due, today }} />}
          href={`/asset/${asset.id}`}
          onFollow={navigate}
        />
      ))}
    </FoldedRow>
  );
};
