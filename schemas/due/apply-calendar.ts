import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { type Calendar, firstOpen, lastOpen } from "./calendar.ts";
import { formatCivilDate } from "./civil.ts";
import { explain, type Span } from "./kinds/span.ts";
import { policyFor } from "./policy.ts";
import type { IntervalRule } from "./rule-schema.ts";

/** Doing it before this day would not count for this window, or would begin it anew. */
function floorOf({ kind }: IntervalRule, { record, earliest }: Span, registered: CivilDate) {
  const after = (record === null ? registered : record.on + 1) as CivilDate;
  switch (kind) {
    case "from-last-done":
    case "by-result":
    case "by-risk":
    case "on-usage":
    case "recurrence":
      return after;
    case "anniversary":
    case "each-period":
    case "spacing":
    case "on-event":
      return Math.max(earliest, after) as CivilDate;
  }
}

/** A day off is no reason to leave the period or to pass the greatest spacing. */
const endOf = ({ kind }: IntervalRule, { latest }: Span, limit: CivilDate | undefined) =>
  kind === "each-period" || kind === "spacing" ? latest : limit;

const moved = ({ why }: Span, step: Explanation): Explanation => ({
  ...why,
  moved: [...(why.moved ?? []), step],
});

interface Place {
  readonly calendar: Calendar;
  /** Nothing moves a date past it. */
  readonly limit: CivilDate | undefined;
  readonly registered: CivilDate;
}

/**
 * Moves a window off the days on which nothing is done: weekdays off and holidays by `onDayOff`,
 * closures by `whenClosed`. A roll back leads to an earlier day, and one that counts; a later day is
 * the first open one and lies within `limit`. Where there is no such day the date stays as it is:
 * due in spite of the closure, never silently not due.
 */
export function applyCalendar(rule: IntervalRule, span: Span, place: Place): Span {
  const { calendar, limit, registered } = place;
  const shut = calendar.shut(span.due);
  const policy = policyFor(rule, shut);
  const floor = floorOf(rule, span, registered);
  // What is due at once has no window to move in.
  if (span.due <= (span.record?.on ?? registered) || policy === "due-anyway") return span;
  const params = (to: CivilDate) => ({
    date: formatCivilDate(to),
    closed: formatCivilDate(span.due),
    reason: shut?.reason ?? "",
  });
  const lastDay = (due: CivilDate): CivilDate =>
    policyFor(rule, calendar.shut(span.latest)) === "due-anyway" && span.latest >= due
      ? span.latest
      : (lastOpen(calendar, span.latest, due) ?? due);
  const rollBack = (keepsGrace: boolean): Span => {
    const due = lastOpen(calendar, span.due, floor);
    if (due === undefined)
      return { ...span, why: moved(span, explain("no-open-day", params(span.due))) };
    const latest = lastDay(due);
    if (due === span.due) return { ...span, latest };
    return {
      ...span,
      earliest: Math.min(span.earliest, due) as CivilDate,
      due,
      latest: keepsGrace ? latest : due,
      why: moved(span, explain("rolled-back", params(due))),
    };
  };
  switch (policy) {
    case "roll-back":
      return rollBack(true);
    case "bring-forward":
      return rollBack(false);
    case "roll-forward":
    case "on-reopening":
    case "excused": {
      if (shut === null) return rollBack(true);
      const due = firstOpen(calendar, span.due);
      const end = policy === "roll-forward" ? endOf(rule, span, limit) : limit;
      if (due === undefined || (end !== undefined && due > end)) return rollBack(true);
      const latest = lastDay(due);
      const code = {
        "roll-forward": "rolled-forward",
        "on-reopening": "due-on-reopening",
        excused: "excused-while-closed",
      } as const;
      const why = moved(span, explain(code[policy], params(due)));
      // What may not be used after an event stays so, closed or not.
      if (policy === "roll-forward" || span.closure !== undefined)
        return { ...span, due, latest, why };
      const status = policy === "excused" ? "excused" : "blocked";
      return { ...span, due, latest, why, closure: { status, from: span.due, reopens: due } };
    }
  }
}
