import type { Entry } from "@roundbook/schemas";
import { dayOf, instantMs } from "../store/append-log.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
/** A device whose clock runs ahead by more than this is told so on its entries. */
const AHEAD_MS = 5 * 60_000;
/** Zones on Earth lie from 12 hours behind UTC to 14 hours ahead. */
const [WEST_MS, EAST_MS] = [12 * HOUR_MS, 14 * HOUR_MS];

/**
 * Whether an entry's clock cannot be right: it happened after `now` (milliseconds UTC), or its day
 * is that of its instant in no zone.
 */
export function clockDiffers({ civilDate, happenedAt }: Entry, now: number): boolean {
  const day = dayOf(civilDate);
  const at = instantMs(happenedAt);
  if (day > Math.floor((now + EAST_MS) / DAY_MS)) return true;
  if (at === null) return false;
  const [first, last] = [Math.floor((at - WEST_MS) / DAY_MS), Math.floor((at + EAST_MS) / DAY_MS)];
  return at - now > AHEAD_MS || day < first || day > last;
}
