/** Ways to round 100 · sum / (5 · count) that are not the city's, each exact but the last. */
export function roundedHalfEven(sum: number, count: number): number {
  const [over, under] = [100 * sum, 5 * count];
  const floor = Math.floor(over / under);
  const twice = 2 * (over - floor * under);
  if (twice === under) return floor % 2 === 0 ? floor : floor + 1;
  return twice < under ? floor : floor + 1;
}

export const truncated = (sum: number, count: number): number =>
  Math.floor((100 * sum) / (5 * count));

/** Half up, but over binary fractions: a share that ends in .5 may fall just below it. */
export const roundedInFloats = (sum: number, count: number): number =>
  Math.floor((sum / (5 * count)) * 100 + 0.5);
