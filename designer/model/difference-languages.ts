import { translatableTexts } from "@roundbook/schemas";
import { f } from "../messages/facts.ts";
import { apart, same } from "./change-words.ts";
import type { DraftDocument } from "./draft-document.ts";
import { followWording } from "./follow-wording.ts";

type Texts = Readonly<Record<string, string>>;

/** "Welsh" for "cy"; the tag where it has no name. */
const languageName = (tag: string): string =>
  new Intl.DisplayNames(["en"], { type: "language", fallback: "code" }).of(tag) ?? tag;

const change = (about: string, words: { was?: string; is?: string }) => ({
  kind: "languages" as const,
  about,
  ...words,
});

/** A language that comes or goes is told at once; of one that stays, each text said otherwise. */
const ofLanguage = (
  tag: string,
  texts: ReadonlyMap<string, string>,
  was: Texts | undefined,
  is: Texts | undefined,
) => {
  if (same(was, is)) return [];
  const language = languageName(tag);
  const count = (said: Texts) => f("change.texts", { count: Object.keys(said).length });
  if (!was || !is)
    return [change(language, { ...(was && { was: count(was) }), ...(is && { is: count(is) }) })];
  return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((pointer) => {
    if (was[pointer] === is[pointer]) return [];
    const about = f("change.in-language", { language, text: texts.get(pointer) ?? pointer });
    return [change(about, apart(was[pointer], is[pointer], was[pointer], is[pointer]))];
  });
};

/**
 * What is said otherwise in other languages. Wording is addressed by place, so that of the document
 * before is first led to where its texts stand now.
 */
export const languageChanges = (before: DraftDocument, after: DraftDocument) => {
  const led = followWording(before, { ...after, wording: before.wording }).wording ?? {};
  const now = after.wording ?? {};
  const texts = new Map(
    [...translatableTexts(before), ...translatableTexts(after)].map(
      ({ pointer, text }) => [pointer, text] as const,
    ),
  );
  return [...new Set([...Object.keys(led), ...Object.keys(now)])].flatMap((tag) =>
    ofLanguage(tag, texts, led[tag], now[tag]),
  );
};
