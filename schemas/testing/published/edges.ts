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
 * What is not as published: the bound that the engine works out, and the verdicts on readings just
 * within, exactly on and one step outside it. Empty where all is.
 */
export const edgeFaults = (edge: Edge): readonly string[] => {
  const { unit, bound, step, limit, parts, particulars } = edge;
  const inward = limit.max === undefined ? step : -step;
  const tries = [
    [bound + inward, "pass"],
    [bound, "pass"],
    [bound - inward, "fail"],
  ] as const;
  return tries.flatMap(([reading, wanted]) => {
    const value = roundSignificant(reading);
    const judged = judgeReading(value, unit, [limit], parts, particulars);
    const found = judged.limits.map((one) => `${one.bound} ${judged.verdict}`).join();
    const right = `${roundSignificant(bound)} ${wanted}`;
    return found === right ? [] : [`${value}: ${found} instead of ${right}`];
  });
};
