/** What was read on a civil day. */
export interface TrendPoint {
  readonly day: number;
  readonly value: number;
}

export interface TrendLine {
  /** Change in a mean month. */
  readonly perMonth: number;
  /** Where the line stands on a day. */
  at(day: number): number;
  /** Days between which it would meet the limit; the later null where it is past what may be told. */
  readonly meets: { readonly earliest: number; readonly latest: number | null } | null;
}

export type Trend = TrendLine | "too-few" | "none-clear";

const LEAST_READINGS = 8;
const LEAST_DAYS = 182;
const DAYS_A_MONTH = 365.2425 / 12;
/** What binary fractions add to a day that comes out whole. */
const A_SPECK = 1e-6;

/** Quantile 0.975 of Student's t with `v` degrees of freedom (Abramowitz & Stegun 26.7.5). */
export function studentT(v: number): number {
  const x = 1.959963984540054;
  const terms = [
    (x ** 3 + x) / 4,
    (5 * x ** 5 + 16 * x ** 3 + 3 * x) / 96,
    (3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x) / 384,
    (79 * x ** 9 + 776 * x ** 7 + 1482 * x ** 5 - 1920 * x ** 3 - 945 * x) / 92_160,
  ];
  return terms.reduce((sum, term, at) => sum + term / v ** (at + 1), x);
}

/**
 * Days between which a line meets a level, 95 % sure: Fieller's theorem (E. C. Fieller, 1954), the
 * roots d of (ȳ + b·d − L)² = t²·s²·(1/n + d²/Sxx). Null unless the slope differs from nought.
 */
function meeting(
  line: { n: number; meanX: number; meanY: number; slope: number; sxx: number; noise: number },
  level: number,
): readonly [number, number] | null {
  const { n, meanX, meanY, slope, sxx, noise } = line;
  const a = slope ** 2 - noise / sxx;
  const b = slope * (meanY - level);
  const c = (meanY - level) ** 2 - noise / n;
  const root = b * b - a * c;
  if (a <= 0 || root < 0) return null;
  return [meanX + (-b - Math.sqrt(root)) / a, meanX + (-b + Math.sqrt(root)) / a];
}

/**
 * The straight line of ordinary least squares through readings, and when it would meet a limit. It
 * takes eight readings over half a year, and a slope that differs from nought with 95 % confidence
 * (Student's t). Nothing is told beyond twice the time that was read over.
 */
export function trendOf(
  points: readonly TrendPoint[],
  limits: { readonly min: number | null; readonly max: number | null },
): Trend {
  const n = points.length;
  const days = points.map(({ day }) => day);
  const [first, last] = [Math.min(...days), Math.max(...days)];
  if (n < LEAST_READINGS || last - first < LEAST_DAYS) return "too-few";
  const mean = (of: (point: TrendPoint) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / n;
  const meanX = mean(({ day }) => day);
  const meanY = mean(({ value }) => value);
  const sxx = n * mean(({ day }) => (day - meanX) ** 2);
  const slope = (n * mean(({ day, value }) => (day - meanX) * (value - meanY))) / sxx;
  const at = (day: number) => meanY + slope * (day - meanX);
  const residual = (n * mean(({ day, value }) => (value - at(day)) ** 2)) / (n - 2);
  const noise = studentT(n - 2) ** 2 * residual;
  if (slope === 0 || slope ** 2 <= noise / sxx) return "none-clear";
  const level = slope < 0 ? limits.min : limits.max;
  const line = { n, meanX, meanY, slope, sxx, noise };
  const inside = level !== null && (slope < 0 ? at(last) > level : at(last) < level);
  const met = inside ? meeting(line, level) : null;
  const horizon = last + (last - first);
  const [from, to] = met ?? [Number.NaN, Number.NaN];
  return {
    perMonth: slope * DAYS_A_MONTH,
    at,
    meets:
      met === null || from > horizon
        ? null
        : {
            earliest: Math.max(last, Math.floor(from + A_SPECK)),
            latest: to > horizon ? null : Math.ceil(to - A_SPECK),
          },
  };
}
