import {
  Button,
  Buttons,
  dateWords,
  LeafWords,
  SelectField,
  WEEKDAYS,
} from "@roundbook/runner/form";
import type { CalendarRow, PlaceRow, Problem, SiteCalendar } from "@roundbook/schemas";
import { useQuery, useQueryClient } from "@tanstack/react-query";
import { useState } from "react";
import { ro } from "../messages/rounds.ts";
import { getJson, sendJson } from "./client.ts";
import { isWritten, Times, type TimesName } from "./estate-closed-times.tsx";
import { useRefused } from "./use-refused.tsx";

interface Region {
  readonly code: string;
  readonly name: string;
}

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
  // What is wrong with a line stands at it until that line is written in again.
  const [wrong, setWrong] = useState<readonly Problem[]>([]);
  const { refused, guard, busy } = useRefused((problem) => {
    if (!/^\/(closures|seasons)\/\d+/.test(problem.pointer)) return false;
    setWrong((others) => [...others, problem]);
    return true;
  });
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
      // Lines without a word go, so that those left are called by the places they are sent at.
      setCalendar(body);
      setWrong([]);
      await sendJson("PUT", `/api/sites/${site.id}/calendar`, body);
      await queries.invalidateQueries();
      onDone(true);
    });
  const choose = (code: string) => {
    const { region: _, ...rest } = calendar;
    setCalendar(code === "" ? rest : { ...rest, region: code });
  };
  const times = (name: TimesName, kind: "date" | "text") => (
    <Times
      name={name}
      title={ro(`closed.${name}`)}
      kind={kind}
      times={calendar[name] ?? []}
      wrong={wrong}
      onChange={(next, at) => {
        setCalendar({ ...calendar, [name]: [...next] });
        // Without a place all of them have moved.
        const gone = at === undefined ? `/${name}/` : `/${name}/${at}/`;
        setWrong(wrong.filter(({ pointer }) => !`${pointer}/`.startsWith(gone)));
      }}
    />
  );
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
      {times("closures", "date")}
      {times("seasons", "text")}
      {refused}
      <Buttons>
        <Button kind="secondary" onClick={() => onDone(false)}>
          {ro("closed.leave")}
        </Button>
        <Button kind="primary" disabled={busy} onClick={() => void save()}>
          {ro("closed.save")}
        </Button>
      </Buttons>
    </LeafWords>
  );
};
