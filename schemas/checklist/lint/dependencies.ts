import { wordsIn } from "../../formulas/compile.ts";
import { valueTexts } from "../formula-texts.ts";
import type { Checklist } from "../meta-schema.ts";

const ANSWERS = "answers.";

/**
 * Whether a text comes in the end from the answer to a point: by name, through values, and through
 * what is calculated from it. Each name is followed once, however many texts have it.
 */
export const comesFrom = (doc: Checklist): ((text: string, point: string) => boolean) => {
  const values = new Map(Object.entries(doc.values ?? {}));
  const points = new Map(Object.entries(doc.properties));
  const known = new Map<string, ReadonlySet<string>>();

  const textsOf = (name: string): readonly string[] => {
    const value = values.get(name);
    if (value) return valueTexts(name, value).map(([, text]) => text);
    const calculate = points.get(name.slice(ANSWERS.length))?.calculate;
    return name.startsWith(ANSWERS) && calculate !== undefined ? [calculate] : [];
  };
  const behind = (name: string): ReadonlySet<string> => {
    const found = known.get(name);
    if (found) return found;
    const answers = new Set(name.startsWith(ANSWERS) ? [name.slice(ANSWERS.length)] : []);
    // A circle is a problem of its own; here it ends.
    known.set(name, new Set(answers));
    for (const word of textsOf(name).flatMap(wordsIn)) {
      for (const point of behind(word)) answers.add(point);
    }
    known.set(name, answers);
    return answers;
  };
  return (text, point) => wordsIn(text).some((word) => behind(word).has(point));
};

export type Edges = ReadonlyMap<string, ReadonlySet<string>>;

/** Places that lead to one another, as lists: R. Tarjan, "Depth-First Search and Linear Graph Algorithms". */
const components = (edges: Edges): readonly (readonly string[])[] => {
  const found: (readonly string[])[] = [];
  const index = new Map<string, number>();
  const open: string[] = [];
  const standing = new Set<string>();
  const visit = (name: string): number => {
    let least = index.size;
    const own = least;
    index.set(name, own);
    open.push(name);
    standing.add(name);
    for (const next of edges.get(name) ?? []) {
      const known = index.get(next);
      if (known === undefined) least = Math.min(least, visit(next));
      else if (standing.has(next)) least = Math.min(least, known);
    }
    if (least === own) {
      const members = open.splice(open.lastIndexOf(name));
      for (const member of members) standing.delete(member);
      found.push(members);
    }
    return least;
  };
  for (const name of edges.keys()) if (!index.has(name)) visit(name);
  return found;
};

/** Places that lead back to themselves, those of one circle together, in linear time. */
export const circles = (edges: Edges): readonly (readonly string[])[] =>
  components(edges).filter(
    (members) => members.length > 1 || members.some((name) => edges.get(name)?.has(name)),
  );
