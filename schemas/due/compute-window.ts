import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { applyCalendar, type Placed } from "./apply-calendar.ts";
import type { Calendar } from "./calendar.ts";
import { formatCivilDate } from "./civil.ts";
import { addDuration } from "./duration.ts";
import type { IntervalRule } from "./interval-schema.ts";
import { anniversary } from "./kinds/anniversary.ts";
import { eachPeriod } from "./kinds/each-period.ts";
import { byResult, fromLastDone } from "./kinds/from-record.ts";
import { lastSpaced, spacing } from "./kinds/spacing.ts";
import { explain, type Span } from "./kinds/span.ts";
import { doneDays, latestDay } from "./latest-day.ts";
import type { DoneRecord, DueStatus, DueWindow } from "./window.ts";

const laterEntry = (a: DoneRecord, b: DoneRecord): boolean => a.entry > b.entry;

/** Which of two records of one civil date decides: a total order, so arrival order cannot matter. */
function outranks(a: Span, b: Span, ordered: boolean): boolean {
  if (ordered) {
    const [atA, atB] = [a.record.at ?? 0, b.record.at ?? 0];
    return atA === atB ? laterEntry(a.record, b.record) : atA > atB;
  }
  return a.due === b.due ? laterEntry(a.record, b.record) : a.due < b.due;
}

/** What the deciding record of one civil date says. */
function decide(day: readonly DoneRecord[], say: (record: DoneRecord) => Span): Span | undefined {
  // On one date an inspection says more than a date carried in from old papers.
  const inspections = day.filter((record) => record.broughtForward !== true);
  const records = inspections.length > 0 ? inspections : day;
  const ordered = records.every((record) => record.at !== null);
  let best: Span | undefined;
  for (const record of records) {
    const other = say(record);
    if (best === undefined || outranks(other, best, ordered)) best = other;
  }
  return best;
}

function spanOf(
  rule: IntervalRule,
  done: readonly DoneRecord[],
  day: readonly DoneRecord[],
): Span | undefined {
  switch (rule.kind) {
    case "from-last-done":
      return decide(day, (record) => fromLastDone(rule, record));
    case "by-result":
      return decide(day, (record) => byResult(rule, record));
    case "each-period":
      return decide(day, (record) => eachPeriod(rule, record));
    case "anniversary": {
      const days = doneDays(done);
      return decide(day, (record) => anniversary(rule, days, record));
    }
    case "spacing": {
      const days = doneDays(done);
      const counted = lastSpaced(rule.min, days);
      const last = days.at(-1);
      if (counted === undefined || last === undefined) return undefined;
      const then = last === counted ? day : latestDay(done.filter(({ on }) => on <= counted));
      return decide(then, (record) => spacing(rule, record, last));
    }
  }
}

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

function withCover({ coveredBy, on }: DoneRecord, why: Explanation): Explanation {
  if (coveredBy === undefined) return why;
  const step = explain("covered-by-longer", { title: coveredBy, date: formatCivilDate(on) });
  return { ...why, moved: [step, ...(why.moved ?? [])] };
}

/**
 * When an asset is due by a rule. Order of records is (civil date, instant, entry id); on a civil
 * date where any instant is unknown so is the order, and the earliest due date wins. Without a
 * calendar every day is an open one.
 */
export function computeWindow(
  rule: IntervalRule,
  done: readonly DoneRecord[],
  registered: CivilDate,
  calendar?: Calendar,
): DueWindow {
  const day = latestDay(done);
  const span = spanOf(rule, done, day);
  if (span === undefined)
    return {
      earliest: registered,
      due: registered,
      latest: registered,
      from: null,
      lastDone: null,
      why: explain("never-done", { date: formatCivilDate(registered) }),
    };
  const { neverAfter } = rule;
  const limit = neverAfter === undefined ? undefined : addDuration(span.record.on, neverAfter);
  const bounded = bound(span, neverAfter, limit);
  const placed: Placed =
    calendar === undefined ? bounded : applyCalendar(rule, bounded, calendar, limit);
  const { record, earliest, due, latest, closure } = placed;
  const why = withCover(record, placed.why);
  return {
    earliest: Math.max(Math.min(earliest, due), record.on) as CivilDate,
    due,
    latest,
    from: record.entry,
    lastDone: day[0]?.on ?? record.on,
    why,
    ...(closure === undefined ? {} : { closure }),
  };
}

/** Overdue only after `latest`; both ends of a window belong to it. A closure says what it is meanwhile. */
export function statusOn(window: DueWindow, on: CivilDate): DueStatus {
  if (window.lastDone === null) return "never-done";
  if (on > window.latest) return "overdue";
  const { closure } = window;
  // What blocks use blocks it on the day it reopens too, until it is done.
  if (closure?.status === "blocked" && on >= closure.from) return "blocked";
  if (closure?.status === "excused" && on >= closure.from && on < closure.reopens) return "excused";
  if (on > window.due) return "late-window";
  if (on === window.due) return "due";
  return on >= window.earliest ? "early" : "not-yet";
}
