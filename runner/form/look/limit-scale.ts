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
 * A range with round ticks that holds every given figure with room beyond the outermost. The room
 * is two fifths of the largest figure, less where the figures lie so close that bars would merge.
 * Starts or ends at zero when zero is near.
 */
export function niceRange(figures: readonly number[]): { range: Range; ticks: readonly number[] } {
  const known = figures.filter(Number.isFinite);
  const least = known.length > 0 ? Math.min(...known) : 0;
  const most = known.length > 0 ? Math.max(...known) : 1;
  const size = Math.max(Math.abs(least), Math.abs(most)) || 1;
  const spread = most - least;
  const room = spread > 0 ? Math.min(0.4 * size, 4 * spread) : 0.4 * size;
  const near = 0.45 * size;
  const low = least >= 0 && least - room <= near ? 0 : least - room;
  const high = most <= 0 && least < 0 && most + room >= -near ? 0 : most + room;
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
