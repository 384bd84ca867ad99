import type { Reading } from "@roundbook/schemas";
import { inOwnUnit } from "./plausible.ts";
import type { FormPoint } from "./sections.ts";

/** A judged value is rounded to 12 significant digits; a reading is compared as closely. */
const same = (a: number, b: number): boolean =>
  Number(a.toPrecision(12)) === Number(b.toPrecision(12));

/**
 * Which of several readings counts: the first that comes to the value the judge worked out. None
 * where all count, or only their mean.
 */
export function countingAt(
  { definition }: FormPoint,
  readings: readonly (Reading | undefined)[],
  value: number | undefined,
): number | undefined {
  const { several, quantity } = definition;
  if (value === undefined || quantity === undefined) return undefined;
  if (several?.combine !== "highest" && several?.combine !== "lowest") return undefined;
  const at = readings.findIndex((reading) => {
    const own = reading && inOwnUnit(reading, quantity);
    return own !== undefined && same(own, value);
  });
  return at < 0 ? undefined : at;
}
