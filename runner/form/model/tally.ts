import type { Judgement, PointVerdict } from "@roundbook/schemas";

export type Counted = NonNullable<PointVerdict> | "not-judged";
const ORDER: readonly Counted[] = [
  "pass",
  "advisory",
  "fail",
  "undecided",
  "not-counted",
  "not-judged",
];

export interface Tally {
  /** Points that were asked, with or without limits. */
  readonly asked: number;
  /** How many of each verdict, in a fixed order, none of them nought: together they are `asked`. */
  readonly verdicts: readonly { readonly verdict: Counted; readonly count: number }[];
}

export function tallyOf({ points }: Judgement): Tally {
  const asked = Object.values(points).filter((point) => point.asked || point.verdict !== null);
  const verdicts = ORDER.map((verdict) => ({
    verdict,
    count: asked.filter((point) => (point.verdict ?? "not-judged") === verdict).length,
  })).filter(({ count }) => count > 0);
  return { asked: asked.length, verdicts };
}

/** Samples whose result is awaited. A judgement sealed before there were any does not say so. */
export const pendingOf = (judgement: Judgement): readonly string[] =>
  (judgement as Partial<Judgement>).pending ?? [];

/** What keeps a verdict from being the whole story; nothing where the inspection is complete. */
export function reservationsOf(judgement: Judgement): readonly ("incomplete" | "awaited")[] {
  return [
    ...(judgement.complete ? [] : (["incomplete"] as const)),
    ...(pendingOf(judgement).length > 0 ? (["awaited"] as const) : []),
  ];
}
