import type { CivilDate } from "../shared/ids.ts";
import type { IntervalRule } from "./rule-schema.ts";
import type { DoneRecord } from "./window.ts";

/** A date from old papers moves the due date too, though it proves nothing. */
const movesDate = (record: DoneRecord): boolean => record.counts || record.broughtForward === true;

/**
 * The records of the last civil date on which anything counted. They alone decide a due window,
 * and `latestDay([...latestDay(earlier), ...later])` loses nothing, unless the rule `needsHistory`.
 */
export function latestDay(records: readonly DoneRecord[]): readonly DoneRecord[] {
  let last: DoneRecord | undefined;
  let more = false;
  for (const record of records) {
    if ((last !== undefined && record.on < last.on) || !movesDate(record)) continue;
    more = last?.on === record.on;
    last = record;
  }
  if (last === undefined) return [];
  const { on } = last;
  return more ? records.filter((record) => record.on === on && movesDate(record)) : [last];
}

/** The last civil date on which anything counted; null when it was never done. */
export function lastDay(records: readonly DoneRecord[]): CivilDate | null {
  let last: CivilDate | null = null;
  for (const record of records)
    if ((last === null || record.on > last) && movesDate(record)) last = record.on;
  return last;
}

/** The civil dates on which anything counted, ascending, each once. */
export function doneDays(records: readonly DoneRecord[]): readonly CivilDate[] {
  const days: CivilDate[] = [];
  let ascending = true;
  for (const record of records) {
    if (!movesDate(record)) continue;
    const last = days.at(-1);
    if (last === record.on) continue;
    if (last !== undefined && record.on < last) ascending = false;
    days.push(record.on);
  }
  return ascending ? days : [...new Set(days)].sort((a, b) => a - b);
}

/** Whether the last day alone does not tell when it is due: what was done before matters too. */
export const needsHistory = ({ kind }: IntervalRule): boolean =>
  kind === "anniversary" || kind === "spacing";
