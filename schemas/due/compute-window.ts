import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { applyCalendar } from "./apply-calendar.ts";
import { formatCivilDate } from "./civil.ts";
import { addDuration } from "./duration.ts";
import type { DueFacts } from "./facts.ts";
import { hasTrigger } from "./has-trigger.ts";
import { explain, type Span } from "./kinds/span.ts";
import { lastDay } from "./latest-day.ts";
import type { IntervalRule } from "./rule-schema.ts";
import { spanOf } from "./span-of.ts";
import { type DoneRecord, type DueWindow, NO_DATE } from "./window.ts";

export { statusOn } from "./status-on.ts";

/** No window, margin or kept anniversary leads past the longest time from one to the next. */
function bound(span: Span, neverAfter: string | undefined, limit: CivilDate | undefined): Span {
  if (neverAfter === undefined || limit === undefined || span.latest <= limit) return span;
  const within = (day: CivilDate) => Math.min(day, limit) as CivilDate;
  const { moved = [], ...why } = span.why;
  const step = explain("never-after", { limit: neverAfter, date: formatCivilDate(limit) });
  return {
    ...span,
    earliest: within(span.earliest),
    due: within(span.due),
    latest: limit,
    why: { ...why, moved: [...moved, step] },
  };
}

function withCover(record: DoneRecord | null, why: Explanation): Explanation {
  if (record === null || record.coveredBy === undefined) return why;
  const { coveredBy, on } = record;
  const step = explain("covered-by-longer", { title: coveredBy, date: formatCivilDate(on) });
  return { ...why, moved: [step, ...(why.moved ?? [])] };
}

/** What the law allows at most from a day on, whichever of two rules says it. */
const strictest = (from: CivilDate, a: string | undefined, b: string | undefined) =>
  a === undefined || b === undefined
    ? (a ?? b)
    : addDuration(from, a) <= addDuration(from, b)
      ? a
      : b;

/** `law`: the longest time of the rule that this one stands for. */
function byRule(rule: IntervalRule, facts: DueFacts, law?: string): DueWindow {
  const { calendar, registered } = facts;
  const span = spanOf(rule, facts);
  const counted = span.record?.on;
  const neverAfter = counted === undefined ? undefined : strictest(counted, rule.neverAfter, law);
  const limit =
    neverAfter === undefined || counted === undefined
      ? undefined
      : addDuration(counted, neverAfter);
  const bounded = bound(span, neverAfter, limit);
  const placed =
    calendar === undefined || bounded.undecided || bounded.due === NO_DATE
      ? bounded
      : applyCalendar(rule, bounded, { calendar, limit, registered });
  const { record, earliest, due, latest, closure, undecided } = placed;
  return {
    earliest: Math.max(Math.min(earliest, due), record?.on ?? registered) as CivilDate,
    due,
    latest,
    from: record?.entry ?? null,
    lastDone: lastDay(facts.done),
    why: withCover(record, placed.why),
    ...(closure === undefined ? {} : { closure }),
    ...(undecided === undefined ? {} : { undecided }),
  };
}

/** A window whose date would lie before a day, on that day: nothing is asked or excused before it. */
function atTheEarliest(window: DueWindow, day: CivilDate): DueWindow {
  const { closure, ...rest } = window;
  const latest = Math.max(window.latest, day) as CivilDate;
  const moved = { ...rest, due: day, latest };
  return closure?.status === "blocked"
    ? { ...moved, closure: { ...closure, from: Math.max(closure.from, day) as CivilDate } }
    : moved;
}

const withStep = (window: DueWindow, step: Explanation): DueWindow => ({
  ...window,
  why: { ...window.why, moved: [...(window.why.moved ?? []), step] },
});

/**
 * When an asset is due by a rule. Records count in the order (civil date, instant, entry id), in
 * whatever order they are given; on a civil date where any instant is unknown so is the order, and
 * the earliest due date wins. Without a calendar every day is an open one.
 *
 * An override's date counts when it lies in the override's time. One beyond it gives way to the
 * rule's own, which then is not before the override's last day. Beside a rule with a trigger, one of
 * another kind only adds: the interval's own holds wherever it is as soon, or blocks use.
 */
export function computeWindow(rule: IntervalRule, facts: DueFacts): DueWindow {
  const { override } = facts;
  if (override === undefined) return byRule(rule, facts);
  const { until, reason } = override;
  const { meter = facts.meter } = override;
  const other = byRule(override.rule, { ...facts, meter }, rule.neverAfter);
  if (hasTrigger(rule) && rule.kind !== override.rule.kind) {
    const asked = byRule(rule, facts);
    if (asked.due <= other.due || asked.closure?.status === "blocked")
      return other.latest < asked.latest && other.due <= (until ?? other.due)
        ? { ...asked, latest: Math.max(other.latest, asked.due) as CivilDate }
        : asked;
  }
  if (until === null || other.due <= until) {
    const params = { reason, until: until === null ? null : formatCivilDate(until) };
    return withStep(other, explain("override", params));
  }
  const own = byRule(rule, facts);
  if (own.due > until) return own;
  const step = explain("override-over", { reason, until: formatCivilDate(until) });
  return withStep(atTheEarliest(own, until), step);
}
