import type { LabelWish } from "./limit-labels.ts";

export interface LimitBound {
  readonly at: number;
  /** `max` is hatched above, `min` below. */
  readonly side: "min" | "max";
  /** "max 0.233" */
  readonly label: string;
  /** The bound could not be had or is not sure: dashed, and nothing is hatched. */
  readonly unsure?: boolean;
}

/** What each bar and the last reading want printed beside them, and on which side. */
export function labelWishes(
  bounds: readonly LimitBound[],
  last: { readonly at: number; readonly label: string } | undefined,
  x: (figure: number) => number,
): readonly LabelWish[] {
  const bars = bounds.map(
    (bound): LabelWish => ({
      text: bound.label,
      x: x(bound.at),
      side: bound.side === "max" ? "after" : "before",
      strong: true,
    }),
  );
  if (!last) return bars;
  const below = bounds.every((bound) => last.at <= bound.at);
  return [
    ...bars,
    { text: last.label, x: x(last.at), side: below ? "before" : "after", strong: false },
  ];
}
