import { expect } from "vitest";
import type { Particulars } from "../../checklist/answer-types.ts";
import type { LimitDefinition } from "../../checklist/meta-schema.ts";
import type { PointJudgement } from "../../judge/judgement.ts";
import { judgeOf, type Parts, reading } from "../../judge/testing/checklists.ts";
import { roundSignificant } from "../../shared/significant.ts";

/** A reading judged by some limits, with the values and particulars that they name. */
export const judgeReading = (
  value: number,
  unit: string,
  limits: readonly LimitDefinition[],
  parts: Partial<Parts> = {},
  particulars: Particulars = {},
): PointJudgement =>
  judgeOf({ ...parts, properties: { x: reading(unit, limits) } }).judgePoint("x", {
    particulars,
    answers: { x: { value, unit } },
  });

export interface Edge {
  readonly unit: string;
  /** The published bound, and the smallest step an instrument shows there. */
  readonly bound: number;
  readonly step: number;
  readonly limit: LimitDefinition;
  readonly parts?: Partial<Parts>;
  readonly particulars?: Particulars;
}

/**
 * Expects a published bound to be the one the engine works out, and readings just within, exactly
 * on and one step outside to be judged so.
 */
export const expectEdge = ({ unit, bound, step, limit, parts, particulars }: Edge): void => {
  const at = (value: number) => judgeReading(value, unit, [limit], parts, particulars);
  const inward = limit.max === undefined ? step : -step;
  const near = (by: number) => roundSignificant(bound + by);
  expect(at(bound).limits.map((judged) => judged.bound)).toEqual([roundSignificant(bound)]);
  expect([near(inward), bound, near(-inward)].map((value) => [value, at(value).verdict])).toEqual([
    [near(inward), "pass"],
    [bound, "pass"],
    [near(-inward), "fail"],
  ]);
};
