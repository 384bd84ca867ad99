import type { Comparator } from "../checklist/answer-types.ts";
import type { Explanation } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import type { JudgeCode } from "./codes.ts";
import type { Fit, NumberBound } from "./compare.ts";
import { explained } from "./given.ts";

const CODES: Readonly<Record<NumberBound, Readonly<Record<Fit, JudgeCode>>>> = {
  min: { pass: "within-min", fail: "below-min", undecided: "astride-min" },
  max: { pass: "within-max", fail: "above-max", undecided: "astride-max" },
  exclusiveMin: {
    pass: "within-exclusive-min",
    fail: "not-above-exclusive-min",
    undecided: "astride-exclusive-min",
  },
  exclusiveMax: {
    pass: "within-exclusive-max",
    fail: "not-below-exclusive-max",
    undecided: "astride-exclusive-max",
  },
};

/** How a reading lies to a bound, and by how much, in the point's unit. */
export const whyOfBound = (
  kind: NumberBound,
  fit: Fit,
  reading: { readonly value: number; readonly comparator: Comparator | "" },
  bound: number,
  unit: string | null,
): Explanation =>
  explained(CODES[kind][fit], {
    value: reading.value,
    comparator: reading.comparator,
    bound,
    by: roundSignificant(Math.abs(reading.value - bound)),
    unit,
  });
