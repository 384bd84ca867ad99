import { at, type Problem, problem } from "../../shared/problem.ts";
import { pointKind } from "../guards.ts";
import type { PointDefinition } from "../meta-schema.ts";

/** The words a point can be answered with; null for a grade. */
const optionsOf = (point: PointDefinition): readonly string[] | null => {
  switch (pointKind(point)) {
    case "check":
      return ["ok", "not-ok"];
    case "choice":
      return (point.oneOf ?? []).flatMap((one) => ("const" in one ? [one.const] : []));
    case "choices":
      return (point.items?.oneOf ?? []).map((option) => option.const);
    default:
      return null;
  }
};

/** What a limit accepts can be answered. */
export const lintAccept = (
  pointer: string,
  point: PointDefinition,
  accept: readonly (string | number)[],
): readonly Problem[] => {
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = point;
  const options = optionsOf(point);
  return accept.flatMap((value, index) => {
    const fits = options
      ? typeof value === "string" && options.includes(value)
      : typeof value === "number" && value >= minimum && value <= maximum;
    const allowed = options ?? [`${minimum}–${maximum}`];
    return fits ? [] : [problem(at(pointer, index), "limit-accepts-unknown", { value, allowed })];
  });
};
