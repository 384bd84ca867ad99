import { nearest, wordBudget } from "../../shared/nearest.ts";
import { at, type Problem, problem } from "../../shared/problem.ts";
import type { Checklist } from "../meta-schema.ts";
import { translatableTexts } from "../texts.ts";
import { fallbacks } from "../worded.ts";

/** Whether a pointer leads to anything in the document. */
const leadsIn = (doc: Checklist, pointer: string): boolean => {
  if (pointer === "") return true;
  let part: unknown = doc;
  const [first, ...tokens] = pointer.split("/");
  for (const token of tokens) {
    const name = token.replaceAll("~1", "/").replaceAll("~0", "~");
    if (typeof part !== "object" || part === null || !Object.hasOwn(part, name)) return false;
    part = Reflect.get(part, name);
  }
  return first === "";
};

/** Wording stands for texts that are there, and for all of them or the designer is told. */
export const lintWording = (doc: Checklist): readonly Problem[] => {
  const wording = Object.entries(doc.wording ?? {});
  if (wording.length === 0) return [];
  const known = new Set(translatableTexts(doc).map(({ pointer }) => pointer));
  const places = [...known];
  const budget = wordBudget();
  const placeProblem = (pointer: string, place: string): Problem => {
    if (leadsIn(doc, place)) return problem(pointer, "wording-not-a-text", { place });
    const near = nearest(place, places, budget);
    return problem(pointer, "wording-unknown-place", { place, nearest: near });
  };
  const byTag = new Map(wording.map(([tag, texts]) => [tag.toLowerCase(), texts]));

  return wording.flatMap(([language, texts]) => {
    const pointer = at("/wording", language);
    const wrong = Object.keys(texts)
      .filter((place) => !known.has(place))
      .map((place) => placeProblem(at(pointer, place), place));
    const served = fallbacks(language).flatMap((tag) => {
      const one = byTag.get(tag);
      return one ? [one] : [];
    });
    // A variety of the document's own language says only what it says otherwise.
    if (fallbacks(language).includes((doc.language ?? "").toLowerCase())) return wrong;
    const missing = places.filter((place) => !served.some((one) => Object.hasOwn(one, place)));
    const params = { language, missing: missing.length };
    return missing.length > 0 ? [...wrong, problem(pointer, "wording-incomplete", params)] : wrong;
  });
};
