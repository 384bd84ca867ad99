import {
  type AssetRow,
  type CivilDate,
  type DueRow,
  type DueStatus,
  formatCivilDate,
  hasDates,
  parseCivilDate,
  statusOn,
} from "@roundbook/schemas";
import { Due, dueWords, Standing, Stop, shortDay } from "../form/index.ts";
import { w } from "../messages/page.ts";
import { civilDateIn } from "../offline/civil-today.ts";

/** Civil day number of an ISO date; a date from the server that is none is a fault of ours. */
export const dayOf = (iso: string) => {
  const day = parseCivilDate(iso);
  if (day === undefined) throw new Error(`not a civil date: ${iso}`);
  return day;
};

/** Today at a zone by the device's clock, corrected by the last known offset. */
export const todayAt = (zone: string, now: number, clockOffset: number) =>
  dayOf(civilDateIn(zone, now + clockOffset));

export const isoOf = formatCivilDate;

/** The days of a row as numbers. */
export const daysOf = ({ earliest, due, latest }: DueRow) => ({
  earliest: dayOf(earliest),
  due: dayOf(due),
  latest: dayOf(latest),
});

/** A row without dates waits for an event, or its series is over. */
export const isDated = (row: DueRow): boolean => hasDates({ due: dayOf(row.due) });

/** How a row stands on a day; what the server said holds for the day it was read. */
export const standingOn = (row: DueRow, today: CivilDate): DueStatus => {
  const { closure, lastDone, status } = row;
  return statusOn(
    {
      ...daysOf(row),
      lastDone: lastDone === null ? null : dayOf(lastDone),
      ...(closure && {
        closure: {
          status: closure.status,
          from: dayOf(closure.from),
          reopens: dayOf(closure.reopens),
        },
      }),
      ...(status === "undecided" && { undecided: true }),
    },
    today,
  );
};

/** "needs its environment": what a date that cannot be told is lacking. */
export const lackingOf = ({ why }: DueRow, title: (name: string) => string): string | undefined => {
  const { names } = why.params;
  if (why.code === "needs-meter") return w("due.needs-meter");
  if (why.code !== "needs-particulars" || !Array.isArray(names)) return undefined;
  return w("due.needs", {
    names: names.map((name) => title(String(name)).toLowerCase()).join(", "),
  });
};

/** When a row is due, in words over its mark. */
export const DueDays = ({ due, today }: { readonly due: DueRow; readonly today: CivilDate }) => {
  if (!isDated(due)) return null;
  const days = daysOf(due);
  switch (standingOn(due, today)) {
    case "undecided":
      return (
        <Due earliest={null} due={null} latest={null} today={today}>
          {w("due.undecided")}
        </Due>
      );
    case "blocked":
      return (
        <Due {...days} today={today}>
          <Stop>{w("due.before-use")}</Stop>
        </Due>
      );
    case "excused":
      return (
        <Standing
          below={
            due.closure &&
            w("due.excused-until", { day: shortDay(dayOf(due.closure.reopens), today) })
          }
        >
          {w("due.excused")}
        </Standing>
      );
    default:
      return (
        <Due {...days} today={today}>
          {dueWords(days, today)}
        </Due>
      );
  }
};

/** Right column of a row: the due mark, or the status of an asset that is not in service. */
export const DueOf = ({
  asset,
  due,
  today,
}: {
  readonly asset: AssetRow;
  readonly due: DueRow | null;
  readonly today: CivilDate;
}) => {
  if (asset.status !== "in-service") {
    return (
      <Standing strong={asset.status === "out-of-service"}>{w(`status.${asset.status}`)}</Standing>
    );
  }
  return due && <DueDays due={due} today={today} />;
};
