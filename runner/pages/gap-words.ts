import { type CivilDate, civilParts, type HistoryEntry } from "@roundbook/schemas";
import { dayAndMonth, MONTHS } from "../form/index.ts";
import { book } from "../messages/book.ts";
import { dayOf } from "./due-of.tsx";
import type { HistoryGap } from "./life-gaps.ts";

const SAID = 3;

const latestWords = (missed: readonly CivilDate[], today: CivilDate): string => {
  const days = missed.slice(0, SAID).map((day) => dayAndMonth(day, today));
  const last = days.pop() ?? "";
  const more = missed.length > SAID ? " …" : "";
  return (days.length === 0 ? last : `${days.join(", ")} and ${last}`) + more;
};

/** The other entries of a gap's time: with some, only its own check is missing. */
const isEmpty = ({ from, to }: HistoryGap, rows: readonly HistoryEntry[]): boolean =>
  !rows.some(({ entry }) => {
    const day = dayOf(entry.civilDate);
    return day >= from && (to === null || day <= to);
  });

/** What is missing from a history, and why: "No entry from 14 October to 9 December." */
export const gapWords = (
  gap: HistoryGap,
  rows: readonly HistoryEntry[],
  today: CivilDate,
): string => {
  const { title, missed, excused } = gap;
  // While it lasts it is told from the last entry on.
  const from = dayAndMonth(gap.to === null ? ((gap.from - 1) as CivilDate) : gap.from, today);
  const to = gap.to === null ? null : dayAndMonth(gap.to, today);
  const alone = isEmpty(gap, rows);
  const first =
    to === null
      ? alone
        ? book("gap.no-entry-since", { from })
        : book("gap.none-of-since", { title, from })
      : alone
        ? book("gap.no-entry", { from, to })
        : book("gap.none-of", { title, from, to });
  const latest = latestWords(missed, today);
  const [only] = missed;
  const then =
    only === undefined
      ? undefined
      : missed.length > 1
        ? book("gap.missed-more", { title, count: missed.length, latest })
        : gap.monthly
          ? book("gap.month", { month: MONTHS[civilParts(only).month - 1] ?? "", latest })
          : book("gap.missed", { title, latest });
  const why = excused && book("gap.excused", { reason: excused });
  return [first, then, why].filter(Boolean).join(" ");
};
