import type { CivilDate, SiteBundle } from "@roundbook/schemas";
import { useState } from "react";
import { useLocation } from "wouter";
import { dayAndMonth, FoldedRow, PlaceHeading, Row, Rows, unbroken } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { DueOf, dayOf } from "./due-of.tsx";
import type { Round, RoundPlace, RoundRow } from "./round-model.ts";
import { RoundRowView } from "./round-row.tsx";

interface PartProps {
  readonly bundle: SiteBundle;
  readonly today: CivilDate;
}

/** What is due in one place, what is done there folded into a line. */
export const PlaceOfRound = ({
  place,
  bundle,
  today,
}: PartProps & { readonly place: RoundPlace }) => {
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
        )}
      </Rows>
    </section>
  );
};

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
