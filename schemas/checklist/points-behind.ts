import { wordsIn } from "../formulas/compile.ts";
import { valueTexts } from "./formula-texts.ts";
import type { Checklist } from "./meta-schema.ts";

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
