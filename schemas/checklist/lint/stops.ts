import { nearest, type WordBudget, wordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import { pointTexts } from "../formula-texts.ts";
import type { Checklist, StopDefinition } from "../meta-schema.ts";
import { pointsBehind } from "../points-behind.ts";
import { dateTexts } from "./dates.ts";
import { circles } from "./dependencies.ts";

const targetsOf = (doc: Checklist, stop: StopDefinition): ReadonlySet<string> =>
  new Set([
    ...(stop.points ?? []),
    ...(doc.groups ?? []).flatMap(({ id, points }) => (stop.groups?.includes(id) ? points : [])),
  ]);

/** Circles of points whose answers or verdicts need one another, stops between them included. */
const circlesOf = (doc: Checklist, stops: readonly StopDefinition[]) => {
  const behind = pointsBehind(doc);
  const edges = new Map(
    Object.entries(doc.properties).map(([name, point]) => [
      name,
      new Set(
        [...pointTexts(name, point), ...dateTexts(doc, name)].flatMap(([, text]) => [
          ...behind(text),
        ]),
      ),
    ]),
  );
  for (const [index, stop] of stops.entries()) {
    // A place of its own for each stop: no point is named so.
    const between = `stop ${index}`;
    edges.set(between, new Set(stop.after));
    for (const target of targetsOf(doc, stop)) edges.get(target)?.add(between);
  }
  const circleOf = new Map<string, number>();
  for (const [number, circle] of circles(edges).entries()) {
    for (const member of circle) circleOf.set(member, number);
  }
  return circleOf;
};

const unknown = (
  doc: Checklist,
  pointer: string,
  stop: StopDefinition,
  budget: WordBudget,
): readonly Problem[] => {
  const known = Object.keys(doc.properties);
  const groups = (doc.groups ?? []).map(({ id }) => id);
  const points = (["after", "points"] as const).flatMap((part) =>
    (stop[part] ?? []).flatMap((point, index) => {
      const place = at(pointer, part, index);
      if (!Object.hasOwn(doc.properties, point)) {
        const near = nearest(point, known, budget);
        return [problem(place, "stop-unknown-point", { point, nearest: near })];
      }
      return part === "after" && doc.properties[point]?.limits === undefined
        ? [problem(place, "stop-without-verdict", { point })]
        : [];
    }),
  );
  const unknownGroups = (stop.groups ?? []).flatMap((group, index) => {
    if (groups.includes(group)) return [];
    const near = nearest(group, groups, budget);
    return [problem(at(pointer, "groups", index), "stop-unknown-group", { group, nearest: near })];
  });
  return [...points, ...unknownGroups];
};

/** Stops name points that have verdicts, and never stop what they depend on. */
export const lintStops = (doc: Checklist): readonly Problem[] => {
  const stops = doc.stops ?? [];
  if (stops.length === 0) return [];
  const budget = wordBudget();
  const circleOf = circlesOf(doc, stops);
  return stops.flatMap((stop, index) => {
    const pointer = at("/stops", index);
    const circle = circleOf.get(`stop ${index}`);
    const points = [...targetsOf(doc, stop)].filter(
      (target) => circle !== undefined && circleOf.get(target) === circle,
    );
    return [
      ...unknown(doc, pointer, stop, budget),
      ...(points.length > 0 ? [problem(pointer, "stop-stops-itself", { points })] : []),
    ];
  });
};
