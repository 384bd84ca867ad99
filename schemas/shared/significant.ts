/** Digits that count when numbers are compared: JSON doubles carry at least 15, arithmetic eats a few. */
const DIGITS = 12;
/** Powers of ten that doubles hold exactly. */
const POWERS = Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));
const LEAST = 1e11;
const MOST = 1e12;

const scaled = (size: number, shift: number): number =>
  shift >= 0 ? size * (POWERS[shift] ?? Number.NaN) : size / (POWERS[-shift] ?? Number.NaN);

/** The same by way of the exact decimal expansion: right for every double, and ten times slower. */
const roundExactly = (value: number): number => Number(value.toPrecision(DIGITS));

/**
 * Rounds to 12 significant digits, half away from zero, so that a reading that lies exactly on a
 * computed limit is on it: plain binary comparison finds 0.1 + 0.2 above 0.3. NaN and infinities
 * come back as they are.
 */
export function roundSignificant(value: number): number {
  const size = Math.abs(value);
  if (size < MOST && Math.floor(size) === size) return value;
  const shift = DIGITS - 1 - Math.floor(Math.log10(size));
  const digits = scaled(size, shift);
  const whole = Math.floor(digits);
  const rest = digits - whole;
  // Scaling is off by 2^-13 at most: only a rest near a half, or a slipped logarithm, needs more.
  if (!(digits >= LEAST && digits < MOST) || (rest > 0.499 && rest < 0.501))
    return roundExactly(value);
  // One correctly rounded division of two exact numbers gives the double nearest to the decimal.
  const rounded = scaled(rest < 0.5 ? whole : whole + 1, -shift);
  return value < 0 ? -rounded : rounded;
}
