import type { Judgement, PointVerdict } from "@roundbook/schemas";

export type Counted = NonNullable<PointVerdict>;
const ORDER: readonly Counted[] = ["pass", "advisory", "fail", "undecided", "not-counted"];

export interface Tally {
  /** Points that were asked, with or without limits. */
  readonly asked: number;
  /** How many of each verdict, in a fixed order, none of them nought. */
  readonly verdicts: readonly { readonly verdict: Counted; readonly count: number }[];
}

export function tallyOf({ points }: Judgement): Tally {
  const asked = Object.values(points).filter((point) => point.asked);
  const verdicts = ORDER.map((verdict) => ({
    verdict,
    count: asked.filter((point) => point.verdict === verdict).length,
  })).filter(({ count }) => count > 0);
  return { asked: asked.length, verdicts };
}

/** Samples whose result is awaited. A judgement sealed before there were any does not say so. */
export const pendingOf = (judgement: Judgement): readonly string[] =>
  (judgement as Partial<Judgement>).pending ?? [];
