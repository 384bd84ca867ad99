import { nearest } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { sameDimension } from "../../units/unit.ts";
import { UNIT_CODES, unitOf } from "../../units/units.ts";
import type { Checklist } from "../meta-schema.ts";

const unitProblem = (pointer: string, unit: string | undefined): readonly Problem[] =>
  unit === undefined || unitOf(unit)
    ? []
    : [problem(pointer, "unit-unknown", { unit, nearest: nearest(unit, UNIT_CODES) })];

/** Every unit is known, and a reading's other units measure the same thing. */
export const lintUnits = (doc: Checklist): readonly Problem[] => {
  const problems: Problem[] = [];
  for (const part of ["particulars", "values"] as const) {
    for (const [name, { unit }] of Object.entries(doc[part] ?? {})) {
      problems.push(...unitProblem(at("", part, name, "unit"), unit));
    }
  }
  for (const [name, { quantity }] of Object.entries(doc.properties)) {
    if (!quantity) continue;
    const pointer = at("/properties", name, "quantity");
    problems.push(...unitProblem(at(pointer, "unit"), quantity.unit));
    const own = unitOf(quantity.unit);
    for (const [index, code] of (quantity.alsoIn ?? []).entries()) {
      const place = at(pointer, "alsoIn", index);
      const other = unitOf(code);
      problems.push(...unitProblem(place, code));
      if (own && other && !sameDimension(own, other)) {
        const params = { unit: code, expected: quantity.unit };
        problems.push(problem(place, "unit-other-dimension", params));
      }
    }
  }
  return problems;
};
