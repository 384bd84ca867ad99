import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist, PointDefinition } from "../meta-schema.ts";
import { pointsBehind } from "../points-behind.ts";
import { circles } from "./dependencies.ts";

/** What a formula sees of a point depends on these texts of it. */
const deciding = ({ ask, calculate, several }: PointDefinition): readonly string[] =>
  [ask?.when, calculate, several?.count].filter((text) => typeof text === "string");

/**
 * Points that wait for one another: worked out from each other, or each asked only when the other
 * is answered. One that is asked by its own answer alone is told as `asks-itself`.
 */
export const lintCircles = (doc: Checklist): readonly Problem[] => {
  const behind = pointsBehind(doc);
  const points = Object.entries(doc.properties);
  const edges = new Map(
    points.flatMap(([name, point]) => {
      const needed = new Set(deciding(point).flatMap((text) => [...behind(text)]));
      return needed.size > 0 ? [[name, needed] as const] : [];
    }),
  );
  return circles(edges).flatMap((members) => {
    // As the document lists them.
    const circle = Object.keys(doc.properties).filter((name) => members.includes(name));
    const [first = ""] = circle;
    const point = doc.properties[first];
    const when = point?.ask?.when;
    const counted = when === undefined ? ["several", "count"] : ["ask", "when"];
    const keyword = point?.calculate === undefined ? counted : ["calculate"];
    const pointer = at("/properties", first, ...keyword);
    const asksItself = when !== undefined && behind(when).has(first);
    if (circle.length === 1 && point?.calculate === undefined && asksItself) return [];
    const names = circle.map((name) => `answers.${name}`);
    return [problem(pointer, "value-cycle", { names })];
  });
};
