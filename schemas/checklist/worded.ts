import { at } from "../shared/problem.ts";
import type { Checklist } from "./meta-schema.ts";
import { translatableTexts } from "./texts.ts";

/**
 * The language tags that serve somebody who asked for one, the closest first: RFC 4647 §3.4 lookup
 * ("cy-GB-x-y" → "cy-GB" → "cy"; a single letter never ends a tag). Tags compare without case.
 */
export const fallbacks = (language: string): readonly string[] => {
  const parts = language.toLowerCase().split("-");
  const chain: string[] = [];
  for (let length = parts.length; length > 0; length -= 1) {
    if (length === 1 || (parts[length - 1]?.length ?? 0) > 1) {
      chain.push(parts.slice(0, length).join("-"));
    }
  }
  return chain;
};

/** Texts in the languages that come before the document's own, the closest language first. */
const wordings = (
  doc: Checklist,
  language: string,
): readonly Readonly<Record<string, string>>[] => {
  const given = new Map(
    Object.entries(doc.wording ?? {}).map(([tag, texts]) => [tag.toLowerCase(), texts]),
  );
  const found: Readonly<Record<string, string>>[] = [];
  for (const tag of fallbacks(language)) {
    const texts = given.get(tag);
    if (texts) found.push(texts);
    if (tag === doc.language?.toLowerCase()) break;
  }
  return found;
};

const wordingAt = (texts: ReturnType<typeof wordings>, pointer: string): string | undefined =>
  texts.find((one) => Object.hasOwn(one, pointer))?.[pointer];

/**
 * A text of the checklist in a language, else in the closest one there is, else as it stands; for
 * show, band titles included.
 * @throws RangeError for a pointer that leads to no translatable text.
 */
export const wordedText = (doc: Checklist, language: string, pointer: string): string => {
  const own = translatableTexts(doc).find((text) => text.pointer === pointer);
  if (!own) throw new RangeError(`no text at ${pointer}`);
  return wordingAt(wordings(doc, language), pointer) ?? own.text;
};

/** A copy with the texts at some places replaced. */
const replaced = (part: unknown, texts: ReadonlyMap<string, string>, pointer = ""): unknown => {
  if (typeof part === "string") return texts.get(pointer) ?? part;
  if (Array.isArray(part)) {
    return part.map((one, index) => replaced(one, texts, at(pointer, index)));
  }
  if (typeof part !== "object" || part === null) return part;
  return Object.fromEntries(
    Object.entries(part).map(([name, one]) => [name, replaced(one, texts, at(pointer, name))]),
  );
};

const BAND_TITLE = /^\/scores\/[^/]+\/bands\/\d+\/title$/;

/**
 * The checklist with its texts in a language, each in the closest one there is, else as it stands.
 * Ids, options' values and band titles are data and stay, so verdicts are the same. A judgement
 * quotes bases and members' titles: what is sealed is judged by the document itself.
 */
export const worded = (doc: Checklist, language: string): Checklist => {
  const found = wordings(doc, language);
  if (found.length === 0) return doc;
  const texts = new Map(
    translatableTexts(doc).flatMap(({ pointer }) => {
      const text = BAND_TITLE.test(pointer) ? undefined : wordingAt(found, pointer);
      return text === undefined ? [] : [[pointer, text] as const];
    }),
  );
  return replaced(doc, texts) as Checklist;
};
