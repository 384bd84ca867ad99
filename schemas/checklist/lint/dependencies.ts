import { wordsIn } from "../../formulas/compile.ts";
import { valueTexts } from "../formula-texts.ts";
import type { Checklist } from "../meta-schema.ts";

const ANSWERS = "answers.";

/** The points whose answers a text needs: those it names, and those its values go back to. */
export type PointsBehind = (text: string) => ReadonlySet<string>;

export const pointsBehind = (doc: Checklist): PointsBehind => {
  const values = new Map(Object.entries(doc.values ?? {}));
  const behindValue = new Map<string, ReadonlySet<string>>();

  const behind = (text: string): ReadonlySet<string> => {
    const points = new Set<string>();
    for (const word of wordsIn(text)) {
      if (word.startsWith(ANSWERS)) points.add(word.slice(ANSWERS.length));
      else for (const point of ofValue(word)) points.add(point);
    }
    return points;
  };
  const ofValue = (name: string): ReadonlySet<string> => {
    const known = behindValue.get(name);
    const value = values.get(name);
    if (known || !value) return known ?? new Set();
    // A circle of values is a problem of its own; here it ends.
    behindValue.set(name, new Set());
    const points = new Set(valueTexts(name, value).flatMap(([, text]) => [...behind(text)]));
    behindValue.set(name, points);
    return points;
  };
  return behind;
};

export type Edges = ReadonlyMap<string, ReadonlySet<string>>;

/** Everything that can be reached from a place, without the place itself unless a circle leads back. */
export const reachable = (edges: Edges, from: string): ReadonlySet<string> => {
  const seen = new Set<string>();
  const left = [...(edges.get(from) ?? [])];
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    left.push(...(edges.get(next) ?? []));
  }
  return seen;
};

/** Places that lead back to themselves, those of one circle together. */
export const circles = (edges: Edges): readonly (readonly string[])[] => {
  const reach = new Map([...edges.keys()].map((name) => [name, reachable(edges, name)]));
  const told = new Set<string>();
  return [...edges.keys()].flatMap((name) => {
    if (told.has(name) || !reach.get(name)?.has(name)) return [];
    const circle = [...edges.keys()].filter(
      (other) => reach.get(name)?.has(other) && reach.get(other)?.has(name),
    );
    for (const member of circle) told.add(member);
    return [circle];
  });
};
