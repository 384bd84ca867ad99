import { compileFormula, plainName } from "../../formulas/compile.ts";
import type { Expected, FormulaEngine } from "../../formulas/engine-type.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { unitOf } from "../../units/units.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, LimitDefinition, PointDefinition } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";

const BOUNDS = ["min", "max", "exclusiveMin", "exclusiveMax"] as const;
const NUMERIC: readonly string[] = ["reading", "graded"];

/** Conditions and bounds of all points: that they can be worked out, and can be met. */
export const lintLimits = (
  doc: Checklist,
  names: ChecklistNames,
  engine: FormulaEngine | undefined,
): readonly Problem[] => {
  const formula = (
    pointer: string,
    text: string,
    expected: Expected,
    self?: { readonly point: string; readonly code: "asks-itself" | "bound-of-itself" },
  ) => {
    if (!engine && plainName(text) === null) return [];
    const result = compileFormula(text, names.types, expected, engine);
    if (!result.ok) return result.problems.map((found) => ({ ...found, pointer }));
    return self !== undefined && result.value.names.includes(`answers.${self.point}`)
      ? [problem(pointer, self.code, { point: self.point })]
      : [];
  };

  const lintLimit = (
    pointer: string,
    name: string,
    point: PointDefinition,
    limit: LimitDefinition,
  ) => {
    const kind = pointKind(point);
    const unit = point.quantity && unitOf(point.quantity.unit);
    const problems: Problem[] = [];
    for (const keyword of BOUNDS) {
      const bound = limit[keyword];
      if (bound === undefined) continue;
      const place = at(pointer, keyword);
      if (!NUMERIC.includes(kind)) problems.push(problem(place, "limit-kind", { keyword, kind }));
      else if (typeof bound === "string") {
        // A reading held against itself would meet its limit whatever was found.
        const self = { point: name, code: "bound-of-itself" } as const;
        problems.push(...formula(place, bound, { type: "number", unit }, self));
      }
    }
    if (limit.accept) problems.push(...lintAccept(at(pointer, "accept"), point, limit.accept));
    if (limit.when !== undefined) {
      problems.push(...formula(at(pointer, "when"), limit.when, { type: "boolean" }));
    }
    if (!limit.accept && BOUNDS.every((keyword) => limit[keyword] === undefined)) {
      problems.push(problem(pointer, "limit-empty"));
    }
    if (limit.basis === undefined) problems.push(problem(pointer, "limit-without-basis"));
    return problems;
  };

  const constant = (bound: number | string | undefined): number | undefined => {
    if (typeof bound !== "string") return bound;
    const name = plainName(bound);
    const value =
      name !== null && Object.hasOwn(doc.values ?? {}, name) ? doc.values?.[name] : null;
    return value?.const;
  };

  /** Limits that hold together: the unconditional ones of one severity, each conditional one alone. */
  const contradictions = (pointer: string, limits: readonly LimitDefinition[]) =>
    limits.flatMap((limit, index) => {
      const severity = limit.severity ?? "fail";
      const together = limits.filter(
        (other, position) =>
          position === index ||
          (position < index &&
            !limit.when &&
            !other.when &&
            (other.severity ?? "fail") === severity),
      );
      const { minimum, maximum, open } = corridor(together, constant);
      const impossible = minimum > maximum || (open && minimum === maximum);
      return impossible
        ? [problem(at(pointer, "limits", index), "limit-contradictory", { minimum, maximum })]
        : [];
    });

  return Object.entries(doc.properties).flatMap(([name, point]) => {
    const pointer = at("/properties", name);
    const limits = point.limits ?? [];
    const when = point.ask?.when;
    return [
      ...(when === undefined
        ? []
        : formula(
            at(pointer, "ask", "when"),
            when,
            { type: "boolean" },
            {
              point: name,
              code: "asks-itself",
            },
          )),
      ...limits.flatMap((limit, index) =>
        lintLimit(at(pointer, "limits", index), name, point, limit),
      ),
      ...contradictions(pointer, limits),
    ];
  });
};

/** What all of some limits leave open, as far as their bounds are constants. */
const corridor = (
  limits: readonly LimitDefinition[],
  constant: (bound: number | string | undefined) => number | undefined,
) => {
  let [minimum, maximum, open] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, false];
  for (const limit of limits) {
    for (const keyword of BOUNDS) {
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

const lintAccept = (
  pointer: string,
  point: PointDefinition,
  accept: readonly (string | number)[],
): readonly Problem[] => {
  const kind = pointKind(point);
  const { minimum = Number.NEGATIVE_INFINITY, maximum = Number.POSITIVE_INFINITY } = point;
  if (kind === "reading" || kind === "text" || kind === "photo") {
    return [problem(pointer, "limit-kind", { keyword: "accept", kind })];
  }
  const options =
    kind === "check"
      ? ["ok", "not-ok"]
      : (point.oneOf ?? []).flatMap((one) => ("const" in one ? [one.const] : []));
  const allowed = kind === "graded" ? [`${minimum}–${maximum}`] : options;
  return accept.flatMap((value, index) => {
    const fits =
      typeof value === "number"
        ? kind === "graded" && value >= minimum && value <= maximum
        : kind !== "graded" && options.includes(value);
    return fits ? [] : [problem(at(pointer, index), "limit-accepts-unknown", { value, allowed })];
  });
};
