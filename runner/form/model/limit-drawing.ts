import type {
  LimitJudgement,
  PointJudgement,
  QuantityDefinition,
  Reading,
  Verdict,
} from "@roundbook/schemas";
import { niceRange, type Range } from "../look/limit-scale.ts";
import { inOwnUnit } from "./plausible.ts";

type DrawnKind = "min" | "max" | "exclusiveMin" | "exclusiveMax";

const SIDES: Partial<Readonly<Record<LimitJudgement["kind"], "min" | "max">>> = {
  min: "min",
  exclusiveMin: "min",
  max: "max",
  exclusiveMax: "max",
};
const isDrawn = (kind: LimitJudgement["kind"]): kind is DrawnKind => SIDES[kind] !== undefined;

export interface DrawnBound {
  readonly at: number;
  readonly side: "min" | "max";
  readonly kind: DrawnKind;
}

export interface LimitDrawing {
  readonly range: Range;
  readonly ticks: readonly number[];
  readonly bounds: readonly DrawnBound[];
  readonly now?: {
    readonly at: number;
    readonly verdict: Verdict;
    readonly censored?: "below" | "above";
  };
  readonly last?: number;
}

const isVerdict = (verdict: PointJudgement["verdict"]): verdict is Verdict =>
  verdict !== null && verdict !== "not-counted";

const same = (a: DrawnBound, b: DrawnBound): boolean => a.at === b.at && a.kind === b.kind;

function boundsOf(limits: readonly LimitJudgement[]): readonly DrawnBound[] {
  // Hatching says "outside": advisory bounds are drawn only where nothing fails.
  const failing = limits.filter(
    ({ severity, kind, bound }) => severity === "fail" && isDrawn(kind) && bound !== null,
  );
  const drawn = (failing.length > 0 ? failing : limits).flatMap((limit) => {
    const side = SIDES[limit.kind];
    if (!isDrawn(limit.kind) || side === undefined || limit.bound === null) return [];
    return [{ at: limit.bound, side, kind: limit.kind } as const];
  });
  return drawn.filter((bound, index) => drawn.findIndex((one) => same(one, bound)) === index);
}

/** What is drawn for a point: everything in the point's own unit; `undefined` when nothing can be. */
export function limitDrawing(
  quantity: QuantityDefinition,
  limits: readonly LimitJudgement[],
  verdict: PointJudgement["verdict"],
  reading: Reading | undefined,
  last: Reading | undefined,
  fromZero = false,
): LimitDrawing | undefined {
  const bounds = boundsOf(limits);
  if (bounds.length === 0) return undefined;
  const now = reading && inOwnUnit(reading, quantity);
  const before = last && inOwnUnit(last, quantity);
  const zero = fromZero ? [0] : [];
  const figures = [...bounds.map(({ at }) => at), now, before, ...zero].filter(
    (at) => at !== undefined,
  );
  const { range, ticks } = niceRange(figures);
  const sign = reading?.comparator?.[0];
  return {
    range,
    ticks,
    bounds,
    ...(now !== undefined && {
      now: {
        at: now,
        verdict: isVerdict(verdict) ? verdict : "undecided",
        ...(sign !== undefined && {
          censored: sign === "<" ? ("below" as const) : ("above" as const),
        }),
      },
    }),
    ...(before !== undefined && { last: before }),
  };
}

/** The limit whose sentence stands under the line: the one that decided, else the first. */
export function decidingLimit(
  limits: readonly LimitJudgement[],
  { verdict, bound }: PointJudgement,
): LimitJudgement | undefined {
  const agreeing = limits.filter((limit) => limit.verdict === verdict);
  return agreeing.find((limit) => limit.bound === bound) ?? agreeing[0] ?? limits[0];
}

const decimalsOf = (value: number): number => {
  const text = String(Number(value.toPrecision(12)));
  return text.includes("e") ? 12 : (text.split(".")[1]?.length ?? 0);
};

/**
 * Places to print a bound with: those of the point, more where the bound has more, so that a bound
 * is never shown rounded to where a failing reading would seem to meet it.
 */
export const boundDecimals = (bound: number, decimals = 0): number =>
  Math.max(decimals, Math.min(decimalsOf(bound), 9));
