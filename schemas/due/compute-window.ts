import type { CivilDate } from "../shared/ids.ts";
import type { Explanation } from "../shared/problem.ts";
import { formatCivilDate } from "./civil.ts";
import type { DueCode } from "./codes.ts";
import { addDuration, subtractDuration } from "./duration.ts";
import type { IntervalRule } from "./interval-schema.ts";
import { latestDay } from "./latest-day.ts";
import type { DoneRecord, DueStatus, DueWindow } from "./window.ts";

interface Candidate {
  readonly record: DoneRecord;
  readonly due: CivilDate;
  /** An interval may have tolerances; "at once" has none. */
  readonly tolerant: boolean;
  readonly why: Explanation;
}

const explain = (code: DueCode, params: Explanation["params"]): Explanation => ({ code, params });

function candidate(rule: IntervalRule, record: DoneRecord): Candidate {
  const facts = { date: formatCivilDate(record.on), entry: record.entry };
  const atOnce = (code: DueCode, score: string): Candidate => ({
    record,
    due: record.on,
    tolerant: false,
    why: explain(code, { score, ...facts }),
  });
  switch (rule.kind) {
    case "from-last-done": {
      const code = record.counts && !record.broughtForward ? "from-last-done" : "brought-forward";
      return {
        record,
        due: addDuration(record.on, rule.every),
        tolerant: true,
        why: explain(code, { every: rule.every, ...facts }),
      };
    }
    case "by-result": {
      const { score } = rule;
      const next = Object.hasOwn(record.next, score) ? record.next[score] : undefined;
      if (next === "at-once") return atOnce("at-once", score);
      // A result that gives no interval must never make an asset silently not due.
      if (next === null || next === undefined) return atOnce("no-interval-from-result", score);
      return {
        record,
        due: addDuration(record.on, next),
        tolerant: true,
        why: explain("by-result", { score, next, ...facts }),
      };
    }
  }
}

const laterEntry = (a: DoneRecord, b: DoneRecord): boolean => a.entry > b.entry;

/** Which of two records of one civil date decides: a total order, so arrival order cannot matter. */
function outranks(a: Candidate, b: Candidate, ordered: boolean): boolean {
  if (ordered) {
    const [atA, atB] = [a.record.at ?? 0, b.record.at ?? 0];
    return atA === atB ? laterEntry(a.record, b.record) : atA > atB;
  }
  return a.due === b.due ? laterEntry(a.record, b.record) : a.due < b.due;
}

function deciding(rule: IntervalRule, done: readonly DoneRecord[]): Candidate | undefined {
  const day = latestDay(done);
  // On one date an inspection says more than a date carried in from old papers.
  const inspections = day.filter((record) => record.broughtForward !== true);
  const records = inspections.length > 0 ? inspections : day;
  const ordered = records.every((record) => record.at !== null);
  let best: Candidate | undefined;
  for (const record of records) {
    const other = candidate(rule, record);
    if (best === undefined || outranks(other, best, ordered)) best = other;
  }
  return best;
}

/**
 * When an asset is due by a rule. Order of records is (civil date, instant, entry id); on a civil
 * date where any instant is unknown so is the order, and the earliest due date wins.
 */
export function computeWindow(
  rule: IntervalRule,
  done: readonly DoneRecord[],
  registered: CivilDate,
): DueWindow {
  const best = deciding(rule, done);
  if (best === undefined)
    return {
      earliest: registered,
      due: registered,
      latest: registered,
      from: null,
      lastDone: null,
      why: explain("never-done", { date: formatCivilDate(registered) }),
    };
  const { record, due, tolerant, why } = best;
  const early = tolerant && rule.early !== undefined ? subtractDuration(due, rule.early) : due;
  return {
    earliest: Math.max(early, record.on) as CivilDate,
    due,
    latest: tolerant && rule.late !== undefined ? addDuration(due, rule.late) : due,
    from: record.entry,
    lastDone: record.on,
    why,
  };
}

/** Overdue only after `latest`; both ends of a window belong to it. */
export function statusOn(window: DueWindow, on: CivilDate): DueStatus {
  if (window.lastDone === null) return "never-done";
  if (on > window.latest) return "overdue";
  if (on > window.due) return "late-window";
  if (on === window.due) return "due";
  return on >= window.earliest ? "early" : "not-yet";
}
