/** Steps that people count in: 1, 2 or 5 of a power of ten, about `wanted` of them over a range. */
export function roundStep(range: number, wanted = 3): number {
  const rough = range / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].find((one) => one * power >= rough * 0.999) ?? 10;
  return step * power;
}

export interface ValueScale {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

/** A scale that takes in every value, with room above and below; a single value has one of its own. */
export function valueScale(values: readonly number[]): ValueScale {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const range = most - least || Math.abs(most) || 1;
  const [low, high] = [least - range * 0.15, most + range * 0.15];
  const step = roundStep(high - low);
  const ticks: number[] = [];
  for (let at = Math.ceil(low / step); at * step <= high; at += 1)
    ticks.push(Number((at * step).toPrecision(12)));
  return { low, high, ticks };
}

export interface LimitStep {
  readonly from: number;
  readonly min: number | null;
  readonly max: number | null;
  readonly issue: number;
}

/** The limit of the time: a new step wherever a reading was judged by another one. */
export function limitSteps(
  readings: readonly {
    readonly day: number;
    readonly min: number | null;
    readonly max: number | null;
    readonly issue: number;
  }[],
): LimitStep[] {
  const steps: LimitStep[] = [];
  for (const { day, min, max, issue } of readings) {
    const last = steps.at(-1);
    if (last?.min === min && last.max === max) continue;
    steps.push({ from: day, min, max, issue });
  }
  return steps;
}
