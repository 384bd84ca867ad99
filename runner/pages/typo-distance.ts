/**
 * Edit distance of two texts by letters added, left out, changed, or swapped with their neighbour
 * (Damerau-Levenshtein in its optimal string alignment form). Counted up to `most`: beyond it the
 * answer is `most + 1`. Takes `most` × length steps.
 */
export const typoDistance = (a: string, b: string, most: number): number => {
  const far = most + 1;
  if (Math.abs(a.length - b.length) > most) return far;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i += 1) {
    const next = new Array<number>(b.length + 1).fill(far);
    if (i <= most) next[0] = i;
    let least = next[0] ?? far;
    // Further from the diagonal it is beyond `most` anyway.
    for (let j = Math.max(1, i - most); j <= Math.min(b.length, i + most); j += 1) {
      const same = a[i - 1] === b[j - 1];
      let steps = Math.min(
        (row[j - 1] ?? far) + (same ? 0 : 1),
        (row[j] ?? far) + 1,
        (next[j - 1] ?? far) + 1,
      );
      if (!same && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        steps = Math.min(steps, (before[j - 2] ?? far) + 1);
      next[j] = steps;
      least = Math.min(least, steps);
    }
    if (least > most && Math.min(...row) > most) return far;
    [before, row] = [row, next];
  }
  return Math.min(row[b.length] ?? far, far);
};
