const now = (): number => Number(process.hrtime.bigint()) / 1e6;

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

/** Calls per second of several ways to do one thing: rounds alternate, so that noise meets all alike. */
export const rates = (ways: readonly (() => void)[], rounds = 15, roundMs = 120): number[] => {
  const found: number[][] = ways.map(() => []);
  for (const way of ways) for (let warm = 0; warm < 200; warm += 1) way();
  for (let round = 0; round < rounds; round += 1) {
    ways.forEach((way, at) => {
      let calls = 0;
      const start = now();
      let elapsed = 0;
      while (elapsed < roundMs) {
        for (let burst = 0; burst < 20; burst += 1) way();
        calls += 20;
        elapsed = now() - start;
      }
      found[at]?.push((calls * 1000) / elapsed);
    });
  }
  return found.map(median);
};

/** Median milliseconds of several asynchronous ways, alternating. */
export const latencies = async (
  ways: readonly ((turn: number) => Promise<unknown>)[],
  turns: number,
): Promise<number[]> => {
  const found: number[][] = ways.map(() => []);
  for (let turn = -20; turn < turns; turn += 1) {
    for (const [at, way] of ways.entries()) {
      const start = now();
      await way(Math.abs(turn));
      if (turn >= 0) found[at]?.push(now() - start);
    }
  }
  return found.map(median);
};

export const timed = async (work: () => Promise<unknown>): Promise<number> => {
  const start = now();
  await work();
  return now() - start;
};

/** Median milliseconds of one way, after two turns to warm up. */
export const medianOf = (turns: number, way: () => void): number => {
  const found: number[] = [];
  for (let turn = -2; turn < turns; turn += 1) {
    const start = now();
    way();
    if (turn >= 0) found.push(now() - start);
  }
  return median(found);
};
