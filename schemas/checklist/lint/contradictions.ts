import { plainName } from "../../formulas/compile.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { convert, fitsUnit, unitOf } from "../../units/units.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, LimitDefinition, PointDefinition } from "../meta-schema.ts";

export const NUMBER_BOUNDS = ["min", "max", "exclusiveMin", "exclusiveMax"] as const;

/** A bound that is the same whatever is answered: a number, or a constant by name in that unit. */
export type Constant = (bound: number | string | undefined, unit?: string) => number | undefined;

export const constantsOf = (doc: Checklist): Constant => {
  const values = new Map(Object.entries(doc.values ?? {}));
  return (bound, code) => {
    if (typeof bound !== "string") return bound;
    const value = values.get(plainName(bound) ?? "");
    const number = value?.const;
    const [from, to] = [unitOf(value?.unit ?? ""), unitOf(code ?? "")];
    if (number === undefined || !from || !to) return number;
    return fitsUnit(from, to) ? convert(number, from.code, to.code) : undefined;
  };
};

/** What an answer can be at all, where that is known. */
const rangeOf = (point: PointDefinition): readonly [number, number] => {
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = point;
  const kind = pointKind(point);
  const range = [kind === "count" ? Math.max(minimum, 0) : minimum, maximum] as const;
  // An empty range is told where it stands.
  const isKnown = (kind === "count" || kind === "graded") && range[0] <= range[1];
  return isKnown ? range : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
};

/** What all of some limits leave open, as far as their bounds are constants. */
const corridor = (
  point: PointDefinition,
  limits: readonly LimitDefinition[],
  constant: Constant,
) => {
  let [minimum, maximum] = rangeOf(point);
  let open = false;
  for (const limit of limits) {
    for (const keyword of NUMBER_BOUNDS) {
      const given = constant(limit[keyword], point.quantity?.unit);
      if (given === undefined) continue;
      const bound = roundSignificant(given);
      const exclusive = keyword === "exclusiveMin" || keyword === "exclusiveMax";
      const lower = keyword === "min" || keyword === "exclusiveMin";
      if (lower ? bound >= minimum : bound <= maximum) open ||= exclusive;
      if (lower) minimum = Math.max(minimum, bound);
      else maximum = Math.min(maximum, bound);
    }
  }
  return { minimum, maximum, open };
};

/** The days that some limits leave open, as far as they are written out. */
const days = (limits: readonly LimitDefinition[]) => {
  let [minimum, maximum] = ["0000-01-01", "9999-12-31"];
  for (const { notBefore, notAfter } of limits) {
    if (typeof notBefore === "string" && notBefore > minimum) minimum = notBefore;
    if (typeof notAfter === "string" && notAfter < maximum) maximum = notAfter;
  }
  return { minimum, maximum };
};

/** Limits that nothing can meet: the unconditional ones of one severity, each conditional one alone. */
export const contradictions = (
  pointer: string,
  point: PointDefinition,
  constant: Constant,
): readonly Problem[] => {
  const { limits = [] } = point;
  return limits.flatMap((limit, index) => {
    const severity = limit.severity ?? "fail";
    const together = limits.filter(
      (other, position) =>
        position === index ||
        (position < index && !limit.when && !other.when && (other.severity ?? "fail") === severity),
    );
    const place = at(pointer, "limits", index);
    const { minimum, maximum, open } = corridor(point, together, constant);
    if (minimum > maximum || (open && minimum === maximum)) {
      return [problem(place, "limit-contradictory", { minimum, maximum })];
    }
    const span = days(together);
    return span.minimum > span.maximum ? [problem(place, "limit-contradictory", span)] : [];
  });
};
