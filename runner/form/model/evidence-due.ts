import type { EvidenceItem, PointDefinition, PointVerdict } from "@roundbook/schemas";

export interface EvidenceDue {
  readonly kind: EvidenceItem["kind"];
  readonly atLeast: number;
  readonly given: number;
}

/** One photo kept twice is one photo, as the judge counts. */
const given = (items: readonly EvidenceItem[], kind: EvidenceItem["kind"]): number => {
  const own = items.filter((item) => item.kind === kind);
  return kind === "photo" ? new Set(own.map(({ sha256 }) => sha256)).size : own.length;
};

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
