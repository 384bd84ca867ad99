import { plainName } from "../../formulas/compile.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { roundSignificant } from "../../shared/significant.ts";
import type { Checklist, LimitDefinition } from "../meta-schema.ts";

export const NUMBER_BOUNDS = ["min", "max", "exclusiveMin", "exclusiveMax"] as const;

/** A bound that is the same whatever is answered: a number, or the name of a constant. */
export type Constant = (bound: number | string | undefined) => number | undefined;

export const constantsOf =
  (doc: Checklist): Constant =>
  (bound) => {
    if (typeof bound !== "string") return bound;
    const name = plainName(bound);
    const values = doc.values ?? {};
    return name !== null && Object.hasOwn(values, name) ? values[name]?.const : undefined;
  };

/** What all of some limits leave open, as far as their bounds are constants. */
const corridor = (limits: readonly LimitDefinition[], constant: Constant) => {
  let [minimum, maximum, open] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, false];
  for (const limit of limits) {
    for (const keyword of NUMBER_BOUNDS) {
      const given = constant(limit[keyword]);
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
  limits: readonly LimitDefinition[],
  constant: Constant,
): readonly Problem[] =>
  limits.flatMap((limit, index) => {
    const severity = limit.severity ?? "fail";
    const together = limits.filter(
      (other, position) =>
        position === index ||
        (position < index && !limit.when && !other.when && (other.severity ?? "fail") === severity),
    );
    const place = at(pointer, "limits", index);
    const { minimum, maximum, open } = corridor(together, constant);
    if (minimum > maximum || (open && minimum === maximum)) {
      return [problem(place, "limit-contradictory", { minimum, maximum })];
    }
    const span = days(together);
    return span.minimum > span.maximum ? [problem(place, "limit-contradictory", span)] : [];
  });
