import type { EvidenceItem, PointDefinition, PointVerdict } from "@roundbook/schemas";

export interface EvidenceDue {
  readonly kind: EvidenceItem["kind"];
  readonly atLeast: number;
  readonly given: number;
}

const given = (items: readonly EvidenceItem[], kind: EvidenceItem["kind"]): number =>
  items.filter((item) => item.kind === kind).length;

/** What the verdict of a point asks for, whether or not it has been given. */
export function evidenceDue(
  { ask }: PointDefinition,
  verdict: PointVerdict,
  items: readonly EvidenceItem[],
): readonly EvidenceDue[] {
  if (verdict === null || verdict === "not-counted") return [];
  return (ask?.evidence ?? [])
    .filter(({ on }) => on.includes(verdict))
    .map(({ kind, atLeast = 1 }) => ({ kind, atLeast, given: given(items, kind) }));
}

export const isMissing = ({ atLeast, given: have }: EvidenceDue): boolean => have < atLeast;
