import type {
  DecisionDefinition,
  DecisionRule,
  LimitDefinition,
  SameAsLastDefinition,
} from "@roundbook/schemas";
import { BOUND_KINDS, removeBound } from "./limit-edit.ts";

/** Lets a limit compare with the inspection before, in place of its bounds and what goes with them. */
export const compareWithLast = (limit: LimitDefinition): LimitDefinition => {
  const { decision: _, ...rest } = BOUND_KINDS.reduce(removeBound, limit);
  return { ...rest, sameAsLast: { within: 0 } };
};

export const setLast = (
  limit: LimitDefinition,
  members: Partial<SameAsLastDefinition>,
): LimitDefinition => ({
  ...limit,
  sameAsLast: { within: 0, ...limit.sameAsLast, ...members },
});

export const removeLast = ({ sameAsLast: _, ...limit }: LimitDefinition): LimitDefinition => limit;

/** The plain rule needs no words: a limit without a decision is judged by it. */
export const setRule = (limit: LimitDefinition, rule: DecisionRule): LimitDefinition => {
  const { decision, ...rest } = limit;
  return rule === "simple" ? rest : { ...rest, decision: { ...decision, rule } };
};

export const setDecision = (
  limit: LimitDefinition,
  members: Partial<Pick<DecisionDefinition, "uncertainty" | "guardFactor">>,
): LimitDefinition =>
  limit.decision ? { ...limit, decision: { ...limit.decision, ...members } } : limit;
