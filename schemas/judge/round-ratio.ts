import type { ScoreDefinition } from "../checklist/meta-schema.ts";

export type Rounding = ScoreDefinition["round"];

/** Whether to go from the floor to the next whole number. */
function goesUp(rule: Rounding["rule"], floor: bigint, rest: bigint, divisor: bigint): boolean {
  const half = rest * 2n - divisor;
  switch (rule) {
    case "down":
      return false;
    case "up":
      return rest > 0n;
    case "half-up":
      return half >= 0n;
    case "half-even":
      return half > 0n || (half === 0n && floor % 2n !== 0n);
    case "half-away":
      return half > 0n || (half === 0n && floor >= 0n);
  }
}

/**
 * Rounds numerator ÷ divisor, whole numbers, to a number of decimals without ever forming the
 * quotient in binary: `sum / (5 * n) * 100` in doubles goes wrong on about one score in 300.
 * down and half-up look towards smaller and larger numbers, half-away away from zero.
 */
export function roundRatio(
  numerator: number,
  divisor: number,
  { rule, decimals }: Rounding,
): number {
  const scaled = BigInt(numerator) * 10n ** BigInt(decimals);
  const by = BigInt(divisor);
  let floor = scaled / by;
  // BigInt division truncates towards zero.
  if (scaled < 0n && floor * by !== scaled) floor -= 1n;
  const rest = scaled - floor * by;
  const rounded = goesUp(rule, floor, rest, by) ? floor + 1n : floor;
  return Number(rounded) / 10 ** decimals;
}
