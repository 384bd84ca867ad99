import type { Entry, SealedLeaf } from "@roundbook/schemas";
import { dayOf, instantMs } from "../append-log.ts";

const DAY_MS = 86_400_000;
/** Clocks of the earliest zone on Earth stand this far ahead of UTC. */
const FARTHEST_AHEAD_MS = 14 * 3_600_000;

/** The last day that any place on Earth had begun when the entry was received, as days since 1970. */
export const latestDayOf = ({ receivedAt }: SealedLeaf): number =>
  Math.floor((Date.parse(receivedAt) + FARTHEST_AHEAD_MS) / DAY_MS);

/**
 * When an entry happened: `on` in days since 1970, `at` in milliseconds. Nothing happened after it
 * was received: a device whose clock runs years ahead must not push a due date out of sight, nor
 * stand for ever as the latest word on an asset.
 */
export function whenDone(
  { civilDate, happenedAt }: Pick<Entry, "civilDate" | "happenedAt">,
  leaf: SealedLeaf,
): { on: number; at: number | null } {
  const at = instantMs(happenedAt);
  return {
    on: Math.min(dayOf(civilDate), latestDayOf(leaf)),
    at: at === null ? null : Math.min(at, Date.parse(leaf.receivedAt)),
  };
}
