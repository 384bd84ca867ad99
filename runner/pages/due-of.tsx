import { type AssetRow, type DueRow, formatCivilDate, parseCivilDate } from "@roundbook/schemas";
import { Due, dueWords, Standing } from "../form/index.ts";
import { book } from "../messages/book.ts";
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

/** Right column of a row: the due mark, or the status of an asset that is not in service. */
export const DueOf = ({
  asset,
  due,
  today,
}: {
  readonly asset: AssetRow;
  readonly due: DueRow | null;
  readonly today: ReturnType<typeof dayOf>;
}) => {
  if (asset.status !== "in-service") {
    return (
      <Standing strong={asset.status === "out-of-service"}>
        {book(`status.${asset.status}`)}
      </Standing>
    );
  }
  if (!due) return null;
  const window = {
    earliest: dayOf(due.earliest),
    due: dayOf(due.due),
    latest: dayOf(due.latest),
  };
  return (
    <Due {...window} today={today}>
      {dueWords(window, today)}
    </Due>
  );
};
