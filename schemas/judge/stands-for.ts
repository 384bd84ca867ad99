import type { Given, Measured } from "./given.ts";
import type { PreparedPoint } from "./prepared.ts";

const exact = (readings: readonly Measured[]): readonly number[] | undefined =>
  readings.every(({ comparator }) => comparator === "")
    ? readings.map(({ value }) => value)
    : undefined;

/**
 * The one number an answer stands for, where there is one. A censored reading is a half-line, and
 * readings that are judged each by itself have no number in common.
 */
export function standsFor({ several }: PreparedPoint, given: Given): number | undefined {
  if (given.is === "number") return given.comparator === "" ? given.value : undefined;
  if (given.is !== "many" || several === undefined) return undefined;
  const values = exact(given.readings);
  if (values === undefined) return undefined;
  if (several.combine === "highest") return Math.max(...values);
  return several.combine === "lowest" ? Math.min(...values) : undefined;
}
