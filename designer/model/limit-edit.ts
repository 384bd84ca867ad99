import type { LimitDefinition, PointDefinition } from "@roundbook/schemas";

export const BOUND_KINDS = ["min", "max", "exclusiveMin", "exclusiveMax"] as const;
export type BoundKind = (typeof BOUND_KINDS)[number];

export const boundsOf = (
  limit: LimitDefinition,
): readonly { kind: BoundKind; bound: number | string }[] =>
  BOUND_KINDS.flatMap((kind) => {
    const bound = limit[kind];
    return bound === undefined ? [] : [{ kind, bound }];
  });

/** A number as typed, with point or comma; anything else is a name or a formula. */
export const readBound = (text: string): number | string | undefined => {
  const trimmed = text.trim();
  if (trimmed === "") return undefined;
  const value = Number(trimmed.replace(/^(-?\d+),(\d+)$/, "$1.$2"));
  return Number.isFinite(value) ? value : trimmed;
};

export const removeBound = (limit: LimitDefinition, kind: BoundKind): LimitDefinition => {
  const { [kind]: _, ...rest } = limit;
  return rest;
};

export const setBound = (
  limit: LimitDefinition,
  kind: BoundKind,
  bound: number | string,
): LimitDefinition => ({ ...limit, [kind]: bound });

const LOWER: readonly BoundKind[] = ["min", "exclusiveMin"];

/** The side a limit does not bound yet, if it bounds one: the other end of a band. */
export const otherSide = (limit: LimitDefinition): BoundKind | null => {
  const kinds = boundsOf(limit).map(({ kind }) => kind);
  const below = kinds.some((kind) => LOWER.includes(kind));
  const above = kinds.some((kind) => !LOWER.includes(kind));
  if (below === above) return null;
  return below ? "max" : "min";
};

export const changeSide = (
  limit: LimitDefinition,
  from: BoundKind,
  to: BoundKind,
): LimitDefinition => {
  const bound = limit[from];
  if (bound === undefined || from === to) return limit;
  return { ...removeBound(limit, from), [to]: bound };
};

export const setBasis = (limit: LimitDefinition, text: string): LimitDefinition => {
  const { basis: _, ...rest } = limit;
  return text.trim() === "" ? rest : { ...rest, basis: text.trim() };
};

export const changeLimit = (
  point: PointDefinition,
  at: number,
  change: (limit: LimitDefinition) => LimitDefinition,
): PointDefinition => ({
  ...point,
  limits: (point.limits ?? []).map((limit, index) => (index === at ? change(limit) : limit)),
});

export const addLimit = (point: PointDefinition, limit: LimitDefinition): PointDefinition => ({
  ...point,
  limits: [...(point.limits ?? []), limit],
});

/** Without a limit left the point has no verdict: the member goes, an empty list is no checklist. */
export const removeLimit = (point: PointDefinition, at: number): PointDefinition => {
  const { limits = [], ...rest } = point;
  const left = limits.filter((_, index) => index !== at);
  return left.length === 0 ? rest : { ...rest, limits: left };
};
