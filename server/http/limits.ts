import type { Limits } from "./app-context.ts";
import { createRateLimit } from "./rate-limit.ts";

const MINUTE = 60_000;

/** Guessing a password is slowed per name and per address; a session per minute. */
export const createLimits = (now: () => number): Limits => ({
  signInName: createRateLimit({ capacity: 10, perMs: 15 * MINUTE }, now),
  signInAddress: createRateLimit({ capacity: 100, perMs: 15 * MINUTE }, now),
  feed: createRateLimit({ capacity: 120, perMs: MINUTE }, now),
  /** A device that hands out 1,000 numbers of one kind an hour hands out none to assets. */
  numberBlocks: createRateLimit({ capacity: 20, perMs: 60 * MINUTE }, now),
  session: createRateLimit({ capacity: 1200, perMs: MINUTE }, now),
});
