import type { DoneRecord } from "./window.ts";

/** A date from old papers moves the due date too, though it proves nothing. */
const movesDate = (record: DoneRecord): boolean => record.counts || record.broughtForward === true;

/**
 * The records that decide a due window: those of the last civil date on which anything counted.
 * A store may keep these alone: `latestDay([...latestDay(earlier), ...later])` loses nothing.
 */
export function latestDay(records: readonly DoneRecord[]): readonly DoneRecord[] {
  let day: DoneRecord[] = [];
  for (const record of records) {
    if (!movesDate(record)) continue;
    const on = day[0]?.on;
    if (on === undefined || record.on > on) day = [record];
    else if (record.on === on) day.push(record);
  }
  return day;
}
