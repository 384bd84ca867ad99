import type { Comparator } from "../checklist/answer-types.ts";
import type { BoundKind } from "./judgement.ts";

export type NumberBound = Extract<BoundKind, "min" | "max" | "exclusiveMin" | "exclusiveMax">;
/** Whether a bound holds a reading from above. */
export const isUpper = (kind: NumberBound): boolean => kind === "max" || kind === "exclusiveMax";

export type Fit = "pass" | "fail" | "undecided";

const fits = (kind: NumberBound, value: number, bound: number): boolean => {
  switch (kind) {
    case "min":
      return value >= bound;
    case "max":
      return value <= bound;
    case "exclusiveMin":
      return value > bound;
    case "exclusiveMax":
      return value < bound;
  }
};

/**
 * Whether the set a reading stands for lies within one bound: all of it (pass), none of it (fail)
 * or part of it. An exact reading is the one number; a censored one is a half-line, so `>200` is
 * everything above 200 and never 200 itself. Both numbers come already rounded.
 */
export function compareReading(
  kind: NumberBound,
  comparator: Comparator | "",
  value: number,
  bound: number,
): Fit {
  if (comparator === "") return fits(kind, value, bound) ? "pass" : "fail";
  const open = comparator === "<" || comparator === ">";
  const upward = comparator === ">" || comparator === ">=";
  const lowerBound = kind === "min" || kind === "exclusiveMin";
  if (upward === lowerBound) {
    // Both run the same way: the reading's half-line is inside, or crosses the bound.
    if (open ? fits(lowerBound ? "min" : "max", value, bound) : fits(kind, value, bound))
      return "pass";
    return "undecided";
  }
  // They run against each other: they share at least the end point, or nothing.
  const apart = open ? (upward ? value >= bound : value <= bound) : !fits(kind, value, bound);
  return apart ? "fail" : "undecided";
}
