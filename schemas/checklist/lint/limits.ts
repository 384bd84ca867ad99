import type { FormulaEngine } from "../../formulas/engine-type.ts";
import { wordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { differenceUnit, unitOf } from "../../units/units.ts";
import type { PointKind } from "../answer-types.ts";
import { pointKind } from "../guards.ts";
import type { Checklist, LimitDefinition, PointDefinition } from "../meta-schema.ts";
import type { ChecklistNames } from "../names.ts";
import { lintAccept } from "./accepts.ts";
import { constantsOf, contradictions, NUMBER_BOUNDS } from "./contradictions.ts";
import { DATE_BOUNDS, dateCheck } from "./dates.ts";
import { lintDecision } from "./decisions.ts";
import { formulaCheck } from "./formula-check.ts";

const SINGLE: readonly PointKind[] = ["reading", "count", "graded", "sample", "calculated"];
const NUMBERS: readonly PointKind[] = [...SINGLE, "readings"];

/** The kinds of point that each clause of a limit can hold to something. */
const CLAUSE_KINDS: Readonly<Partial<Record<keyof LimitDefinition, readonly PointKind[]>>> = {
  min: NUMBERS,
  max: NUMBERS,
  exclusiveMin: NUMBERS,
  exclusiveMax: NUMBERS,
  accept: ["check", "choice", "choices", "graded"],
  notBefore: ["date"],
  notAfter: ["date"],
  sameAsLast: SINGLE,
  decision: NUMBERS,
};
const HOLDING = [...NUMBER_BOUNDS, ...DATE_BOUNDS, "accept", "sameAsLast"] as const;

const wrongClauses = (
  pointer: string,
  kind: PointKind,
  limit: LimitDefinition,
): ReadonlyMap<string, Problem> =>
  new Map(
    Object.keys(limit).flatMap((keyword) => {
      const kinds = CLAUSE_KINDS[keyword as keyof LimitDefinition];
      return kinds && !kinds.includes(kind)
        ? [[keyword, problem(at(pointer, keyword), "limit-kind", { keyword, kind })]]
        : [];
    }),
  );

/** Conditions and bounds of all points: that they can be worked out, and can be met. */
export const lintLimits = (
  doc: Checklist,
  names: ChecklistNames,
  engine: FormulaEngine | undefined,
): readonly Problem[] => {
  const formula = formulaCheck(doc, names, engine);
  const dates = dateCheck(doc, wordBudget());
  const constant = constantsOf(doc);

  const lintLimit = (
    pointer: string,
    name: string,
    point: PointDefinition,
    limit: LimitDefinition,
  ): readonly Problem[] => {
    // A grade or a count is a plain number: a bound in ohms says nothing of it.
    const unit = unitOf(point.quantity?.unit ?? "1");
    const number = { type: "number", unit } as const;
    // An uncertainty, or a change, of a temperature is a difference: K where the reading is in Cel.
    const steps = { type: "number", unit: unit && differenceUnit(unit) } as const;
    // A reading held against itself would meet its limit whatever was found.
    const self = { point: name, code: "bound-of-itself" } as const;
    const wrong = wrongClauses(pointer, pointKind(point), limit);
    const bounds = NUMBER_BOUNDS.filter((keyword) => !wrong.has(keyword));
    const uncertainty = at(pointer, "decision", "uncertainty");
    return [
      ...wrong.values(),
      ...bounds.flatMap((keyword) => formula(at(pointer, keyword), limit[keyword], number, self)),
      ...formula(uncertainty, limit.decision?.uncertainty, steps),
      ...formula(at(pointer, "sameAsLast", "within"), limit.sameAsLast?.within, steps, self),
      ...formula(at(pointer, "when"), limit.when, { type: "boolean" }),
      ...(limit.accept && !wrong.has("accept")
        ? lintAccept(at(pointer, "accept"), point, limit.accept)
        : []),
      ...dates(pointer, name, limit),
      ...lintDecision(pointer, limit, constant),
      ...(HOLDING.every((keyword) => limit[keyword] === undefined)
        ? [problem(pointer, "limit-empty")]
        : []),
      ...(limit.basis === undefined ? [problem(pointer, "limit-without-basis")] : []),
    ];
  };

  return Object.entries(doc.properties).flatMap(([name, point]) => {
    const pointer = at("/properties", name);
    const unit = point.quantity && unitOf(point.quantity.unit);
    const limits = point.limits ?? [];
    const asked = { point: name, code: "asks-itself" } as const;
    return [
      ...formula(at(pointer, "ask", "when"), point.ask?.when, { type: "boolean" }, asked),
      ...formula(at(pointer, "calculate"), point.calculate, { type: "number", unit }),
      ...formula(at(pointer, "several", "count"), point.several?.count, {
        type: "number",
        unit: unitOf("1"),
      }),
      ...limits.flatMap((limit, index) =>
        lintLimit(at(pointer, "limits", index), name, point, limit),
      ),
      ...contradictions(pointer, point, constant),
    ];
  });
};
