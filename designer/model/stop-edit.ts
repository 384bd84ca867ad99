import type { StopDefinition } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

const withStops = (document: DraftDocument, stops: readonly StopDefinition[]): DraftDocument => {
  const { stops: _, ...rest } = document;
  return stops.length > 0 ? { ...rest, stops: [...stops] } : rest;
};

/** Adds a rule: a fail of the page's first point stops its last. Unchanged with fewer than two. */
export const addStop = (
  document: DraftDocument,
  order: readonly string[],
  say: string,
): DraftDocument => {
  const [first] = order;
  const last = order.at(-1);
  if (first === undefined || last === undefined || first === last) return document;
  const made: StopDefinition = { after: [first], on: ["fail"], points: [last], say };
  return withStops(document, [...(document.stops ?? []), made]);
};

export const changeStop = (
  document: DraftDocument,
  at: number,
  change: (stop: StopDefinition) => StopDefinition,
): DraftDocument =>
  withStops(
    document,
    (document.stops ?? []).map((stop, index) => (index === at ? change(stop) : stop)),
  );

export const removeStop = (document: DraftDocument, at: number): DraftDocument =>
  withStops(
    document,
    (document.stops ?? []).filter((_, index) => index !== at),
  );

/** A rule with other targets; nothing when it would stop nothing. */
const aimed = (
  { after, on, say }: StopDefinition,
  points: readonly string[],
  groups: readonly string[],
): StopDefinition | undefined => {
  const which = groups.length > 0 ? { groups: [...groups] } : {};
  if (points.length > 0) return { after, on, say, points: [...points], ...which };
  return groups.length > 0 ? { after, on, say, groups: [...groups] } : undefined;
};

/** What is stopped; a rule that would stop nothing stays as it is. */
export const setTargets = (
  stop: StopDefinition,
  points: readonly string[],
  groups: readonly string[],
): StopDefinition => aimed(stop, points, groups) ?? stop;

/** Takes a point or a group out of every rule, and out goes a rule that nothing is left of. */
export const withoutStopped = (
  document: DraftDocument,
  member: "points" | "groups",
  name: string,
): DraftDocument => {
  if (!document.stops) return document;
  const left = (names: readonly string[] = []) => names.filter((one) => one !== name);
  const stops = document.stops.flatMap((stop) => {
    const { points = [], groups = [] } = stop;
    if (member === "groups") return aimed(stop, points, left(groups)) ?? [];
    const after = left(stop.after);
    return (after.length > 0 && aimed({ ...stop, after }, left(points), groups)) || [];
  });
  return withStops(document, stops);
};

/** The rules with a point under another name. */
export const renamedInStops = (
  document: DraftDocument,
  from: string,
  to: string,
): DraftDocument => {
  const renamed = (names: readonly string[]) => names.map((name) => (name === from ? to : name));
  return withStops(
    document,
    (document.stops ?? []).map((stop) => ({
      ...stop,
      after: renamed(stop.after),
      ...(stop.points ? { points: renamed(stop.points) } : {}),
    })),
  );
};
