import type { CivilDate } from "../shared/ids.ts";
import { roundSignificant } from "../shared/significant.ts";
import { convert } from "../units/units.ts";
import type { MeterReading } from "./facts.ts";

/** A reading in the unit of a rule. */
export interface Mark {
  readonly entry: string;
  readonly on: CivilDate;
  readonly at: number | null;
  readonly value: number;
}

/** What one meter showed, in order. */
export interface Meter {
  readonly marks: readonly Mark[];
  /** The first mark of a meter that took the place of another one; null when none did. */
  readonly replaced: Mark | null;
}

/** By civil date, instant and entry; on one date what has no instant comes first. */
const inOrder = (a: Mark, b: Mark): number =>
  a.on - b.on ||
  (a.at ?? Number.NEGATIVE_INFINITY) - (b.at ?? Number.NEGATIVE_INFINITY) ||
  (a.entry < b.entry ? -1 : a.entry > b.entry ? 1 : 0) ||
  a.value - b.value;

/**
 * The meter as it is now, in `unit`: one that shows less than it did has been replaced, and what
 * the one before it showed says nothing. Readings in units of another dimension are left out.
 */
export function meterOf(readings: readonly MeterReading[], unit: string): Meter {
  const all: Mark[] = [];
  for (const { entry, on, at, value, unit: from } of readings) {
    const converted = convert(value, from, unit);
    if (converted === undefined || !Number.isFinite(converted)) continue;
    all.push({ entry, on, at, value: roundSignificant(converted) });
  }
  all.sort(inOrder);
  let first = 0;
  for (let index = 1; index < all.length; index += 1)
    if ((all[index]?.value ?? 0) < (all[index - 1]?.value ?? 0)) first = index;
  return { marks: all.slice(first), replaced: first === 0 ? null : (all[first] ?? null) };
}

/** Mean use a day between the first mark and the last; undefined within one day or where it stood still. */
export function meanRate(marks: readonly Mark[]): number | undefined {
  const [first, last] = [marks[0], marks.at(-1)];
  if (first === undefined || last === undefined || last.on === first.on) return undefined;
  const rate = (last.value - first.value) / (last.on - first.on);
  return rate > 0 ? rate : undefined;
}
