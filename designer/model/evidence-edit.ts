import type { AskDefinition } from "@roundbook/schemas";

type EvidenceRule = NonNullable<AskDefinition["evidence"]>[number];
export type EvidenceKind = EvidenceRule["kind"];

/** What a fail asks for. */
export const failEvidence = (rules: readonly EvidenceRule[]): EvidenceKind[] =>
  (["photo", "note"] as const).filter((kind) =>
    rules.some((rule) => rule.kind === kind && rule.on.includes("fail")),
  );

/**
 * The rules with just these kinds asked for on a fail. What other verdicts ask for stays, and so
 * does how many of a kind are asked for.
 */
export const withFailEvidence = (
  rules: readonly EvidenceRule[],
  kinds: readonly EvidenceKind[],
): EvidenceRule[] => {
  const others = rules.flatMap((rule) => {
    if (!rule.on.includes("fail") || kinds.includes(rule.kind)) return [rule];
    const on = rule.on.filter((verdict) => verdict !== "fail");
    return on.length > 0 ? [{ ...rule, on }] : [];
  });
  const already = failEvidence(rules);
  const added = kinds.filter((kind) => !already.includes(kind));
  return [...others, ...added.map((kind) => ({ kind, on: ["fail" as const], atLeast: 1 }))];
};
