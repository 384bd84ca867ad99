import { DueMark, dateWords, dueWords } from "@roundbook/runner/form";
import { type CivilDate, type DueRow, NO_DATE, parseCivilDate } from "@roundbook/schemas";
import { pl } from "../messages/plan.ts";

/** What cannot be told has no day on its mark. */
const UNKNOWN = { earliest: null, due: null, latest: null } as const;

/** Of an ISO date; the server writes no other. */
export const dayOf = (iso: string): CivilDate => parseCivilDate(iso) ?? (0 as CivilDate);

/** How a window stands: in words, by which day, and as a mark. */
export const DueStanding = ({
  row,
  today,
}: {
  readonly row: DueRow;
  readonly today: CivilDate;
}) => {
  const window = { earliest: dayOf(row.earliest), due: dayOf(row.due), latest: dayOf(row.latest) };
  const { status, closure } = row;
  const undecided = status === "undecided";
  const dated = window.due < NO_DATE && !undecided;
  const loud = status === "overdue" || status === "blocked" || undecided;
  const words =
    status === "overdue"
      ? dueWords(window, today)
      : status === "excused" && closure
        ? pl("due.excused-until", { day: dateWords(closure.reopens) })
        : pl(`status.${status}`);
  return (
    <span className="due-lines">
      <span className={loud ? "danger" : undefined}>{words}</span>
      {dated && status !== "overdue" && status !== "excused" && (
        <span>{dueWords(window, today)}</span>
      )}
      {dated && <DueMark {...window} today={today} />}
      {undecided && <DueMark {...UNKNOWN} today={today} />}
    </span>
  );
};
