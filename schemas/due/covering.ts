import { canonicalize } from "../log/canonical.ts";
import type { CivilDate } from "../shared/ids.ts";
import { type Problem, problem } from "../shared/problem.ts";
import type { Calendar } from "./calendar.ts";
import { computeWindow } from "./compute-window.ts";
import { meanInterval } from "./mean-days.ts";
import type { IntervalRule } from "./rule-schema.ts";
import type { DoneRecord, DueWindow } from "./window.ts";

export interface CoveringCheck {
  readonly title: string;
  readonly rule: IntervalRule;
  /** The points of its checklist as they are defined, by name. */
  readonly points: Readonly<Record<string, unknown>>;
}

/** Points of the shorter check that the longer one does not ask, or asks differently. */
const lacking = (longer: CoveringCheck, shorter: CoveringCheck): readonly string[] =>
  Object.entries(shorter.points)
    .filter(
      ([name, point]) =>
        !Object.hasOwn(longer.points, name) ||
        canonicalize(longer.points[name]) !== canonicalize(point),
    )
    .map(([name]) => name)
    .sort();

/**
 * Why one check cannot cover another; empty when it can. A check is never covered by one at
 * intervals that are shorter, equal, or not known before its result, so covers never run in a circle.
 */
export function coverProblems(longer: CoveringCheck, shorter: CoveringCheck): Problem[] {
  const problems: Problem[] = [];
  const [long, short] = [meanInterval(longer.rule), meanInterval(shorter.rule)];
  if (long === null || short === null || long <= short)
    problems.push(problem("", "covers-not-longer"));
  const points = lacking(longer, shorter);
  if (points.length > 0) problems.push(problem("", "covers-lacks-points", { points }));
  return problems;
}

export interface Covered {
  /** The entry of the longer check, and the day it was done. */
  readonly entry: string;
  readonly on: CivilDate;
  /** The window of the shorter check that it fell into. */
  readonly window: DueWindow;
}

const inOrder = (a: DoneRecord, b: DoneRecord): number =>
  a.on - b.on || (a.at ?? 0) - (b.at ?? 0) || (a.entry < b.entry ? -1 : a.entry > b.entry ? 1 : 0);

/**
 * Which of the longer check's records cover the shorter one: those inside the window that the
 * shorter check had by what was done on earlier days. Outside it, before it was ever done itself,
 * or where `coverProblems` finds any, a longer check covers nothing.
 */
export function coveredBy(
  longer: CoveringCheck,
  shorter: CoveringCheck,
  records: { readonly longer: readonly DoneRecord[]; readonly shorter: readonly DoneRecord[] },
  registered: CivilDate,
  calendar?: Calendar,
): { readonly done: readonly DoneRecord[]; readonly covered: readonly Covered[] } {
  const done = [...records.shorter];
  const covered: Covered[] = [];
  if (coverProblems(longer, shorter).length > 0) return { done, covered };
  for (const record of [...records.longer].sort(inOrder)) {
    // Old papers name a date, not the points that were looked at.
    if (!record.counts || record.broughtForward === true) continue;
    const before = done.filter(({ on }) => on < record.on);
    const window = computeWindow(shorter.rule, {
      done: before,
      registered,
      ...(calendar ? { calendar } : {}),
    });
    const { lastDone, earliest, latest } = window;
    if (lastDone === null || record.on < earliest || record.on > latest) continue;
    covered.push({ entry: record.entry, on: record.on, window });
    done.push({ ...record, coveredBy: longer.title });
  }
  return { done, covered };
}
