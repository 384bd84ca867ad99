import {
  dateWords,
  LeafWords,
  Loading,
  MONTHS,
  PlaceHeading,
  Row,
  Rows,
  StateLine,
  WEEKDAYS,
} from "@roundbook/runner/form";
import type { CalendarRow, SiteCalendar } from "@roundbook/schemas";
import { useState } from "react";
import { ro } from "../messages/rounds.ts";
import { ClosedForm } from "./estate-closed-form.tsx";
import { useCalendars, usePlaces } from "./queries.ts";

/** "1 November" of 11-01. */
const dayOfYear = (written: string): string => {
  const [month = 0, day = 0] = written.split("-").map(Number);
  return `${day}\u00a0${MONTHS[month - 1] ?? ""}`;
};

/** "Saturday and Sunday off; public holidays of GB-ENG; closed for the winter, 1 November to 31 March each year". */
const wordsOf = ({ weekdays = [], region, closures = [], seasons = [] }: SiteCalendar): string => {
  const days = weekdays.map(({ weekday }) => WEEKDAYS[weekday - 1]).join(", ");
  const told = [
    ...(days === "" ? [] : [ro("closed.week", { days })]),
    ...(region === undefined ? [] : [ro("closed.holidays", { region })]),
    ...closures.map(({ from, to, reason }) =>
      ro("closed.closure", { from: dateWords(from), to: dateWords(to), reason }),
    ),
    ...seasons.map(({ from, to, reason }) =>
      ro("closed.season", { from: dayOfYear(from), to: dayOfYear(to), reason }),
    ),
  ];
  return told.length === 0 ? ro("closed.none") : told.join("; ");
};

/** When each site is closed: due dates go by it. */
export const ClosedDays = () => {
  const places = usePlaces().data;
  const calendars = useCalendars().data;
  const [open, setOpen] = useState<string>();
  const [saved, setSaved] = useState(false);
  if (!places || !calendars) return <Loading label={ro("closed.title")} />;
  const sites = places.filter(({ level }) => level === "site");
  if (sites.length === 0) return null;
  const of = (site: string): CalendarRow | undefined => calendars.find((row) => row.site === site);
  const site = sites.find(({ id }) => id === open);
  return (
    <section>
      <PlaceHeading title={ro("closed.title")} />
      {saved && <StateLine>{ro("closed.saved")}</StateLine>}
      <LeafWords>
        <p className="second">{ro("closed.about")}</p>
      </LeafWords>
      <Rows>
        {sites.map(({ id, code, name }) => (
          <Row
            key={id}
            number={code}
            name={name}
            second={wordsOf(of(id)?.calendar ?? {})}
            onPress={() => {
              setSaved(false);
              setOpen(open === id ? undefined : id);
            }}
          />
        ))}
      </Rows>
      {site && (
        <ClosedForm
          key={site.id}
          site={site}
          row={of(site.id)}
          onDone={(kept) => {
            setOpen(undefined);
            setSaved(kept);
          }}
        />
      )}
    </section>
  );
};
