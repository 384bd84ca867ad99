import type { Answer, Answers, Particulars } from "../../checklist/answer-types.ts";
import type { LimitDefinition, PointDefinition } from "../../checklist/meta-schema.ts";
import type { IntervalRule } from "../../due/rule-schema.ts";
import type { PointVerdict } from "../../judge/judgement.ts";
import type { Parts } from "../../judge/testing/checklists.ts";
import { roundSignificant } from "../../shared/significant.ts";
import type { Fact, Marker, Origin } from "./fact.ts";

/** A published rule in the dialect, and what answers to the point `x` come to. */
export interface JudgedCheck {
  /** The rule in our own words. */
  readonly says: string;
  readonly point: PointDefinition;
  /** Particulars, values and other points that the rule names. */
  readonly parts?: Partial<Parts>;
  readonly asset?: Particulars;
  readonly answers?: Answers;
  /** Day of the inspection, ISO 8601. */
  readonly on?: string;
  /** The published figure, where a formula or table has to come to it exactly. */
  readonly bound?: number;
  readonly cases: readonly (readonly [answer: Answer, verdict: PointVerdict])[];
}

/** A published interval: what was done on one day is due on another. */
export interface DueCheck {
  readonly rule: IntervalRule;
  readonly done: string;
  readonly due: string;
  readonly earliest?: string;
}

/** A published conversion; exact to 12 digits unless the figure is rounded. */
export interface ConversionCheck {
  readonly from: readonly [value: number, unit: string];
  readonly to: readonly [value: number, unit: string];
  readonly within?: number;
}

/** A fact and how the engine is held against it. */
export interface CheckedFact extends Fact {
  readonly judged?: readonly JudgedCheck[];
  readonly due?: readonly DueCheck[];
  readonly converts?: readonly ConversionCheck[];
}

export const origin = (
  source: string,
  marker: Marker,
  year: number | null = null,
  section: string | null = null,
): Origin => ({ source, section, year, marker });

export const judgedFact = (id: string, at: Origin, ...judged: JudgedCheck[]): CheckedFact => ({
  id,
  ...at,
  used: "engine",
  judged,
});

export const dueFact = (id: string, at: Origin, ...due: DueCheck[]): CheckedFact => ({
  id,
  ...at,
  used: "engine",
  due,
});

/** Facts about due dates by rules that the due engine does not know. */
export const INTERVALS = "intervals";
export const notOurFact = (id: string, at: Origin, reason: string): CheckedFact => ({
  id,
  ...at,
  used: "not-ours",
  reason,
});

export type NumberKeyword = "min" | "max" | "exclusiveMin" | "exclusiveMax";
export type Cases = JudgedCheck["cases"];

/** One step inside, at and one step outside a bound. */
export const edgeValues = (
  kind: NumberKeyword,
  bound: number,
  step: number,
): readonly (readonly [value: number, verdict: "pass" | "fail"])[] => {
  const lower = kind === "min" || kind === "exclusiveMin";
  const exclusive = kind === "exclusiveMin" || kind === "exclusiveMax";
  const inward = lower ? step : -step;
  return [
    [roundSignificant(bound + inward), "pass"],
    [bound, exclusive ? "fail" : "pass"],
    [roundSignificant(bound - inward), "fail"],
  ];
};

export const edges = (kind: NumberKeyword, bound: number, unit: string, step: number): Cases =>
  edgeValues(kind, bound, step).map(([value, verdict]) => [{ value, unit }, verdict]);

export const readingPoint = (
  unit: string,
  limits: readonly LimitDefinition[],
  more: Partial<PointDefinition> = {},
): PointDefinition => ({
  $ref: "#/$defs/reading",
  title: "Reading",
  quantity: { unit },
  limits: [...limits],
  ...more,
});

/** A published constant: readings around it in its own unit, and any in other units. */
export const constant = (
  says: string,
  kind: NumberKeyword,
  bound: number,
  unit: string,
  step: number,
  more: Cases = [],
): JudgedCheck => ({
  says,
  point: readingPoint(unit, [{ [kind]: bound, basis: says }]),
  cases: [...edges(kind, bound, unit, step), ...more],
});

/** A published range, both ends allowed. */
export const range = (
  says: string,
  [low, high]: readonly [number, number],
  unit: string,
  step: number,
  more: Cases = [],
): JudgedCheck => ({
  says,
  point: readingPoint(unit, [{ min: low, max: high, basis: says }]),
  cases: [...edges("min", low, unit, step), ...edges("max", high, unit, step), ...more],
});

/** Something to look at that has to be in order. */
export const looked = (says: string): JudgedCheck => ({
  says,
  point: { $ref: "#/$defs/check", title: says, limits: [{ accept: ["ok"], basis: says }] },
  cases: [
    ["ok", "pass"],
    ["not-ok", "fail"],
    [{ absent: { reason: "not-checked" } }, "undecided"],
  ],
});

/** An interval counted from the day it was last done. */
export const every = (duration: string, done: string, due: string): DueCheck => ({
  rule: { kind: "from-last-done", every: duration },
  done,
  due,
});
