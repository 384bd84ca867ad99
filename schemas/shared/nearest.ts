/** Edit distance between two short words, counted up to `most` (returns `most + 1` beyond it). */
const distance = (a: string, b: string, most: number): number => {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const swap = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(swap, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? most + 1;
};

/** What comparing words may still take, in steps of one character against another. */
export interface WordBudget {
  steps: number;
}

/** For all the words of one document: some tenths of a second, far more than an honest one needs. */
export const wordBudget = (): WordBudget => ({ steps: 20_000_000 });

/**
 * The known word a mistyped one most likely meant, or null when none is close. Whoever asks for
 * many words gives them one budget; where it ends, no word is suggested any more.
 */
export const nearest = (
  word: string,
  known: readonly string[],
  budget: WordBudget = wordBudget(),
): string | null => {
  const most = Math.max(1, Math.floor(word.length / 3));
  let best: string | null = null;
  let least = most + 1;
  if (word.length > 80) return null;
  for (const candidate of known) {
    budget.steps -= 1;
    if (Math.abs(word.length - candidate.length) > most) continue;
    budget.steps -= word.length * candidate.length;
    if (budget.steps < 0) return null;
    const d = distance(word.toLowerCase(), candidate.toLowerCase(), most);
    if (d < least) [best, least] = [candidate, d];
  }
  return best;
};
