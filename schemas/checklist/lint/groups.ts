import { nearest, wordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";

/** Groups name points that exist, each in one group at most. */
export const lintGroups = (doc: Checklist): readonly Problem[] => {
  const problems: Problem[] = [];
  const ids = new Set<string>();
  const homes = new Map<string, string>();
  const budget = wordBudget();
  const known = Object.keys(doc.properties);
  for (const [index, { id, points }] of (doc.groups ?? []).entries()) {
    const pointer = at("/groups", index);
    if (ids.has(id)) problems.push(problem(at(pointer, "id"), "duplicate-group", { id }));
    ids.add(id);
    for (const [position, point] of points.entries()) {
      const place = at(pointer, "points", position);
      const home = homes.get(point);
      if (!Object.hasOwn(doc.properties, point)) {
        const near = nearest(point, known, budget);
        problems.push(problem(place, "group-unknown-point", { point, nearest: near }));
      } else if (home !== undefined) {
        problems.push(problem(place, "point-in-two-groups", { point, group: home }));
      } else {
        homes.set(point, id);
      }
    }
  }
  return problems;
};
