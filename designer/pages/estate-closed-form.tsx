import {
  Button,
  Buttons,
  dateWords,
  FieldPair,
  LeafWords,
  LineField,
  SelectField,
  WEEKDAYS,
  WordButton,
} from "@roundbook/runner/form";
import type { CalendarRow, PlaceRow, SiteCalendar } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { ro } from "../messages/rounds.ts";
import { getJson, sendJson } from "./client.ts";
import { useRefused } from "./use-refused.tsx";

interface Time {
  readonly from: string;
  readonly to: string;
  readonly reason: string;
}
const EMPTY: Time = { from: "", to: "", reason: "" };
const isWritten = ({ from, to, reason }: Time): boolean => `${from}${to}${reason}`.trim() !== "";

interface Region {
  readonly code: string;
  readonly name: string;
}

const Times = ({
  title,
  kind,
  times,
  onChange,
}: {
  readonly title: string;
  readonly kind: "date" | "text";
  readonly times: readonly Time[];
  onChange(times: readonly Time[]): void;
}) => (
  <fieldset className="closed-times">
    <legend>{title}</legend>
    {times.map((time, at) => {
      const set = (change: Partial<Time>) =>
        onChange(times.map((one, index) => (index === at ? { ...one, ...change } : one)));
      const help = kind === "text" ? ro("closed.month-day") : undefined;
      return (
        // Lines have no name of their own: their place is what they are.
        <div key={at} className="desk-line">
          <FieldPair>
            <LineField
              label={ro("closed.from")}
              type={kind}
              help={help}
              value={time.from}
              onChange={(event) => set({ from: event.target.value })}
            />
            <LineField
              label={ro("closed.to")}
              type={kind}
              help={help}
              value={time.to}
              onChange={(event) => set({ to: event.target.value })}
            />
          </FieldPair>
          <LineField
            label={ro("closed.reason")}
            value={time.reason}
            onChange={(event) => set({ reason: event.target.value })}
          />
          <WordButton onClick={() => onChange(times.filter((_, index) => index !== at))}>
            {ro("closed.remove")}
          </WordButton>
        </div>
      );
    })}
    <WordButton onClick={() => onChange([...times, EMPTY])}>{ro("closed.add")}</WordButton>
  </fieldset>
);

/** All of a site's days closed, put in force as a whole. */
export const ClosedForm = ({
  site,
  row,
  onDone,
}: {
  readonly site: PlaceRow;
  readonly row: CalendarRow | undefined;
  onDone(saved: boolean): void;
}) => {
  const queries = useQueryClient();
  const { refused, guard } = useRefused();
  const [calendar, setCalendar] = useState<SiteCalendar>(row?.calendar ?? {});
  const regions = useQuery({
    queryKey: ["holiday-regions"],
    queryFn: async () => (await getJson<{ rows: Region[] }>("/api/holiday-regions")).rows,
    staleTime: Number.POSITIVE_INFINITY,
  }).data;
  const { weekdays = [], closures = [], seasons = [], region } = calendar;
  const off = (weekday: number): boolean => weekdays.some((one) => one.weekday === weekday);
  const turn = (weekday: number) =>
    setCalendar({
      ...calendar,
      weekdays: off(weekday)
        ? weekdays.filter((one) => one.weekday !== weekday)
        : [...weekdays, { weekday, reason: WEEKDAYS[weekday - 1] ?? "" }],
    });
  const save = () =>
    guard(async () => {
      const body: SiteCalendar = {
        weekdays,
        closures: closures.filter(isWritten),
        seasons: seasons.filter(isWritten),
        ...(region === undefined ? {} : { region }),
      };
      await sendJson("PUT", `/api/sites/${site.id}/calendar`, body);
      await queries.invalidateQueries();
      onDone(true);
    });
  const choose = (code: string) => {
    const { region: _, ...rest } = calendar;
    setCalendar(code === "" ? rest : { ...rest, region: code });
  };
  const written = region === row?.calendar.region ? (row?.holidays ?? []) : [];
  return (
    <LeafWords>
      <h3>{ro("closed.edit", { site: site.name })}</h3>
      <fieldset className="blank-choices">
        <legend>{ro("closed.off")}</legend>
        {WEEKDAYS.map((name, at) => (
          <label key={name} className="desk-tick">
            <input type="checkbox" checked={off(at + 1)} onChange={() => turn(at + 1)} />
            {name}
          </label>
        ))}
      </fieldset>
      <SelectField
        label={ro("closed.region")}
        none={ro("closed.no-region")}
        options={(regions ?? []).map(({ code, name }) => ({ value: code, label: name }))}
        value={region ?? ""}
        onChange={(event) => choose(event.target.value)}
      />
      {written.length > 0 && (
        <details>
          <summary className="closed-written">{ro("closed.show")}</summary>
          <p className="second">
            {ro("closed.written", {
              days: written.map(({ date, reason }) => `${dateWords(date)} ${reason}`).join(", "),
            })}
          </p>
        </details>
      )}
      <Times
        title={ro("closed.closures")}
        kind="date"
        times={closures}
        onChange={(times) => setCalendar({ ...calendar, closures: [...times] })}
      />
      <Times
        title={ro("closed.seasons")}
        kind="text"
        times={seasons}
        onChange={(times) => setCalendar({ ...calendar, seasons: [...times] })}
      />
      {refused}
      <Buttons>
        <Button kind="secondary" onClick={() => onDone(false)}>
          {ro("closed.leave")}
        </Button>
        <Button kind="primary" onClick={() => void save()}>
          {ro("closed.save")}
        </Button>
      </Buttons>
    </LeafWords>
  );
};
