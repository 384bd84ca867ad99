import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { type Calendar, firstOpen, lastOpen } from "./calendar.ts";
import { formatCivilDate } from "./civil.ts";
import type { IntervalRule, WhenClosed } from "./interval-schema.ts";
import { explain, type Span } from "./kinds/span.ts";
import type { Closure } from "./window.ts";

export interface Placed extends Span {
  readonly closure?: Closure;
}

/** Doing it before this day would not count for this window, or would begin it anew. */
function floorOf({ kind }: IntervalRule, { record, earliest }: Span): CivilDate {
  const after = (record.on + 1) as CivilDate;
  switch (kind) {
    case "from-last-done":
    case "by-result":
      return after;
    case "anniversary":
    case "each-period":
    case "spacing":
      return Math.max(earliest, after) as CivilDate;
  }
}

const moved = ({ why }: Span, step: Explanation): Explanation => ({
  ...why,
  moved: [...(why.moved ?? []), step],
});

/**
 * Moves a window off the days a place is closed. A roll leads to an earlier day, and one that
 * counts; a later day is the first open one and lies within `limit`. Where there is no such day the
 * date stays as it is: due in spite of the closure, never silently not due.
 */
export function applyCalendar(
  rule: IntervalRule,
  span: Span,
  calendar: Calendar,
  limit: CivilDate | undefined,
): Placed {
  const policy: WhenClosed = rule.whenClosed ?? "roll-back";
  const reason = calendar.closed(span.due);
  const floor = floorOf(rule, span);
  // What is due at once has no window to move in.
  if (span.due <= span.record.on || policy === "due-anyway") return span;
  const params = (to: CivilDate) => ({
    date: formatCivilDate(to),
    closed: formatCivilDate(span.due),
    reason: reason ?? "",
  });
  const rollBack = (keepsGrace: boolean): Placed => {
    const due = lastOpen(calendar, span.due, floor);
    if (due === undefined)
      return { ...span, why: moved(span, explain("no-open-day", params(span.due))) };
    const latest = lastOpen(calendar, span.latest, due) ?? due;
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
    case "on-reopening":
    case "excused": {
      if (reason === null) return rollBack(true);
      const due = firstOpen(calendar, span.due);
      if (due === undefined || (limit !== undefined && due > limit)) return rollBack(true);
      const status = policy === "excused" ? "excused" : "blocked";
      return {
        ...span,
        due,
        latest: Math.max(due, lastOpen(calendar, span.latest, due) ?? due) as CivilDate,
        why: moved(
          span,
          explain(policy === "excused" ? "excused-while-closed" : "due-on-reopening", params(due)),
        ),
        closure: { status, from: span.due, reopens: due },
      };
    }
  }
}
