import type { AssetRow } from "@roundbook/schemas";
import { typoDistance } from "./typo-distance.ts";

/** Slips of a finger that are forgiven. */
const TYPOS = 2;
/** With fewer letters than this anything is two slips from anything. */
const TYPED_FOR_TYPOS = 4;
const SUGGESTED = 3;

export interface Suggestion {
  readonly text: string;
  readonly count: number;
}

const plain = (text: string): string => text.trim().replace(/\s+/g, " ").toLowerCase();

/** How well a description fits what is typed, 0 the best; null when it does not. */
const fitOf = (text: string, wanted: string): number | null => {
  const own = plain(text);
  if (own.startsWith(wanted)) return 0;
  if (own.includes(` ${wanted}`)) return 1;
  if (wanted.length < TYPED_FOR_TYPOS) return null;
  // Whether it is typed in full or only begun.
  let least = TYPOS + 1;
  for (let more = -TYPOS; more <= TYPOS; more += 1)
    least = Math.min(least, typoDistance(wanted, own.slice(0, wanted.length + more), TYPOS));
  return least > TYPOS ? null : 1 + least;
};

/**
 * Descriptions that this estate already uses for a type: those that begin as typed, then those
 * with a word that does, then those a slip or two away; among them the commonest first.
 */
export const suggestDescriptions = (
  assets: readonly AssetRow[],
  typed: string,
  assetType: string,
): readonly Suggestion[] => {
  const wanted = plain(typed);
  const counts = new Map<string, number>();
  for (const asset of assets)
    if (asset.assetType === assetType)
      counts.set(asset.description, (counts.get(asset.description) ?? 0) + 1);
  return [...counts]
    .flatMap(([text, count]) => {
      const fit = text === typed ? null : fitOf(text, wanted);
      return fit === null ? [] : [{ text, count, fit }];
    })
    .sort((a, b) => a.fit - b.fit || b.count - a.count || (a.text < b.text ? -1 : 1))
    .slice(0, SUGGESTED)
    .map(({ text, count }) => ({ text, count }));
};
