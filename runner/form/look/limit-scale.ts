/** The drawing's own measures, in the px of its view box. */
export const lineBox = { width: 298, left: 14, right: 284 } as const;

export type Range = readonly [low: number, high: number];

/** Position of a figure on the line; what lies beyond an end is drawn at that end. */
export function scaleFor([low, high]: Range) {
  const { left, right } = lineBox;
  const span = high - low;
  return (figure: number) => {
    if (!(span > 0)) return (left + right) / 2;
    const share = Math.min(1, Math.max(0, (figure - low) / span));
    return left + share * (right - left);
  };
}

const steps = [1, 2, 2.5, 5, 10];

/**
 * A range with 3 to 6 round ticks that holds every given figure with room beyond the outermost.
 * Starts at zero when the figures are positive and zero is not far off the scale.
 */
export function niceRange(figures: readonly number[]): { range: Range; ticks: readonly number[] } {
  const known = figures.filter(Number.isFinite);
  if (known.length === 0) return { range: [0, 1], ticks: [0, 0.5, 1] };
  let low = Math.min(...known);
  let high = Math.max(...known);
  const spread = high - low || Math.abs(high) || 1;
  if (low >= 0 && low <= 3 * spread) low = 0;
  else low -= spread * 0.4;
  high = high <= 0 && -high <= 3 * spread ? 0 : high + spread * 0.4;
  const step = roundStep((high - low) / 4);
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  const ticks: number[] = [];
  for (let at = first; at <= last; at += 1) ticks.push(Number((at * step).toPrecision(12)));
  return { range: [ticks[0] ?? low, ticks.at(-1) ?? high], ticks };
}

function roundStep(rough: number) {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = steps.find((step) => step * power >= rough * 0.999) ?? 10;
  return factor * power;
}

/** Ticks hidden by a bar or dot are left out: a label under a mark would read as its value. */
export function clearTicks<Tick extends { readonly at: number }>(
  ticks: readonly Tick[],
  taken: readonly number[],
  scale: (figure: number) => number,
  room = 12,
) {
  return ticks.filter((tick) => taken.every((x) => Math.abs(scale(tick.at) - x) >= room));
}
