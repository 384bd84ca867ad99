import type { Explanation } from "../shared/problem.ts";
import { roundSignificant } from "../shared/significant.ts";
import type { JudgeCode } from "./codes.ts";
import type { Fit, NumberBound } from "./compare.ts";
import type { Decided } from "./decision.ts";
import { explained, type Measured } from "./given.ts";

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
  reading: Measured,
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

const GUARDED: Readonly<Record<Fit, JudgeCode>> = {
  pass: "within-guarded",
  fail: "outside-guarded",
  undecided: "astride-guarded",
};

/** How a reading lies to a bound that a decision rule has moved by its guard band. */
export const whyOfGuard = (
  { fit, conformity }: Decided,
  { value, comparator }: Measured,
  guarded: {
    readonly bound: number;
    readonly guard: number;
    readonly acceptance: number;
    readonly rule: string;
  },
  unit: string | null,
): Explanation =>
  explained(
    conformity === "conditional-pass" || conformity === "conditional-fail"
      ? conformity
      : GUARDED[fit],
    { value, comparator, ...guarded, unit },
  );

const LAST: Readonly<Record<Fit, JudgeCode>> = {
  pass: "same-as-last",
  fail: "not-same-as-last",
  undecided: "astride-last",
};

/** How a reading lies to the one before it. */
export const whyOfLast = (
  fit: Fit,
  { value, comparator }: Measured,
  last: number,
  within: number,
  unit: string | null,
): Explanation =>
  explained(LAST[fit], {
    value,
    comparator,
    last,
    within,
    by: roundSignificant(Math.abs(value - last)),
    unit,
  });
