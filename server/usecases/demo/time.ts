import type { Context } from "../context.ts";

const DAY_MS = 86_400_000;

/** Eight in the morning UTC, so many days before. */
export const daysBefore = (now: number, days: number): number =>
  Math.floor(now / DAY_MS) * DAY_MS - days * DAY_MS + 8 * 3_600_000;

/** The same context as it was at another instant. */
export const later = (ctx: Context, instant: number): Context => ({ ...ctx, clock: () => instant });
