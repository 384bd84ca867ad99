import type { PointKind } from "@roundbook/schemas";

/** Kinds of points as a manager thinks of them: what is looked at, measured, and kept. */
export const KIND_GROUPS = [
  { id: "look", kinds: ["check", "choice", "choices", "graded", "count", "text"] },
  { id: "measure", kinds: ["reading", "readings", "sample", "calculated"] },
  { id: "keep", kinds: ["photo", "date", "signature"] },
] as const satisfies readonly { id: string; kinds: readonly PointKind[] }[];

/** Every kind, in that order. */
export const KINDS_IN_ORDER: readonly PointKind[] = KIND_GROUPS.flatMap(({ kinds }) => [...kinds]);
