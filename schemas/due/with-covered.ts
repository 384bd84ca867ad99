import type { CivilDate } from "../shared/ids.ts";
import { computeWindow } from "./compute-window.ts";
import type { CoverPlan, CoverStep } from "./covering.ts";
import type { DueFacts } from "./facts.ts";
import { latestDay, needsHistory } from "./latest-day.ts";
import type { DoneRecord } from "./window.ts";

/** An inspection of a longer check that stood for a shorter one. */
export interface Covered {
  /** The shorter one. */
  readonly interval: string;
  readonly entry: string;
  readonly on: CivilDate;
}

/** What is known of one asset. */
export interface CoverFacts {
  /** What was done of an interval's own checklist. */
  records(interval: string): readonly DoneRecord[];
  /** All else that its windows follow from. */
  facts(interval: string): Omit<DueFacts, "done">;
  /**
   * Whether an inspection asked every point of a shorter interval's checklist, as an older issue of
   * its own may not have; absent: all did.
   */
  asks?(record: DoneRecord, shorter: string): boolean;
}

export interface WithCovered {
  /** What was done of an interval, by itself or by a longer check. */
  done(interval: string): readonly DoneRecord[];
  readonly covered: readonly Covered[];
}

const inOrder = (a: DoneRecord, b: DoneRecord): number =>
  a.on - b.on || (a.at ?? 0) - (b.at ?? 0) || (a.entry < b.entry ? -1 : a.entry > b.entry ? 1 : 0);

/** Records of the longer checks, each once; old papers name a date, not the points looked at. */
function candidates(
  { by, interval: shorter }: CoverStep,
  own: readonly DoneRecord[],
  doneOf: (interval: string) => readonly DoneRecord[],
  known: CoverFacts,
): readonly DoneRecord[] {
  const seen = new Set(own.map(({ entry }) => entry));
  return by
    .flatMap(({ interval, title }) =>
      doneOf(interval).map((record) => ({ ...record, coveredBy: record.coveredBy ?? title })),
    )
    .filter(({ counts, broughtForward }) => counts && broughtForward !== true)
    .filter((record) => known.asks?.(record, shorter) ?? true)
    .sort(inOrder)
    .filter(({ entry }) => !seen.has(entry) && seen.add(entry));
}

/** Those inside the window that the shorter check had by what was done of it on earlier days. */
function coveringOf(
  { rule }: CoverStep,
  own: readonly DoneRecord[],
  longer: readonly DoneRecord[],
  facts: Omit<DueFacts, "done">,
): readonly DoneRecord[] {
  const covering: DoneRecord[] = [];
  const wholly = facts.override !== undefined || needsHistory(rule);
  for (const record of longer) {
    const before = [...own, ...covering].filter(({ on }) => on < record.on);
    const window = computeWindow(rule, { ...facts, done: wholly ? before : latestDay(before) });
    const { lastDone, earliest, latest } = window;
    if (lastDone === null || record.on < earliest || record.on > latest) continue;
    covering.push(record);
  }
  return covering;
}

/**
 * Which inspections of longer checks stand for shorter ones of one asset: those that fall inside
 * the shorter one's window, once that was done itself. A check covered by a longer one covers in its
 * turn. In whatever order records come, the outcome is the same.
 */
export function withCovered(plan: CoverPlan, known: CoverFacts): WithCovered {
  if (plan.length === 0) return { done: (interval) => known.records(interval), covered: [] };
  const all = new Map<string, readonly DoneRecord[]>();
  const doneOf = (interval: string) => all.get(interval) ?? known.records(interval);
  const covered: Covered[] = [];
  for (const step of plan) {
    const { interval } = step;
    const own = known.records(interval);
    if (own.length === 0) continue;
    const longer = candidates(step, own, doneOf, known);
    if (longer.length === 0) continue;
    const covering = coveringOf(step, own, longer, known.facts(interval));
    if (covering.length === 0) continue;
    all.set(interval, [...own, ...covering]);
    covered.push(...covering.map(({ entry, on }) => ({ interval, entry, on })));
  }
  return { done: doneOf, covered };
}
