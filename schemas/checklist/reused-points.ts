import { at, type Problem, problem } from "../shared/problem.ts";
import { sameDimension } from "../units/unit.ts";
import { unitOf } from "../units/units.ts";
import { pointKind } from "./guards.ts";
import type { Checklist, PointDefinition } from "./meta-schema.ts";

/** What a point asks for, told apart as far as its answers could be mistaken for one another. */
function sameQuestion(before: PointDefinition, now: PointDefinition): boolean {
  if (pointKind(before) !== pointKind(now)) return false;
  const [was, is] = [before, now].map(({ quantity }) => quantity && unitOf(quantity.unit));
  return was === undefined || is === undefined || sameDimension(was, is);
}

const named = (point: PointDefinition): string =>
  [pointKind(point), point.quantity?.unit].filter((part) => part !== undefined).join(", ");

/**
 * Points of a new issue whose names stood for another kind or dimension in an earlier issue of the
 * same checklist: defects, trends and "same as last time" go by the name.
 */
export const reusedPoints = (
  earlier: readonly { readonly issue: number; readonly document: Checklist }[],
  now: Checklist,
): readonly Problem[] =>
  Object.entries(now.properties).flatMap(([point, definition]) => {
    for (const { issue, document } of earlier) {
      const before = Object.hasOwn(document.properties, point)
        ? document.properties[point]
        : undefined;
      if (before === undefined || sameQuestion(before, definition)) continue;
      const params = { point, issue, was: named(before), is: named(definition) };
      return [problem(at("/properties", point), "point-reused", params)];
    }
    return [];
  });
