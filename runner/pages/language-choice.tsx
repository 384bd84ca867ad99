import type { Checklist } from "@roundbook/schemas";
import { WordButton } from "../form/index.ts";
import { work } from "../messages/work.ts";

/** A language's own name where the browser knows it, else its tag. */
const nameOf = (tag: string): string => {
  try {
    return new Intl.DisplayNames([tag], { type: "language" }).of(tag) ?? tag;
  } catch {
    return tag;
  }
};

/** Languages a checklist is worded in. Nothing is shown for one that has only its own. */
export const LanguageChoice = ({
  document,
  language,
  onLanguage,
}: {
  readonly document: Checklist;
  readonly language: string | undefined;
  onLanguage(language: string): void;
}) => {
  const others = Object.keys(document.wording ?? {});
  if (others.length === 0) return null;
  const own = document.language ?? "en";
  const tags = [own, ...others.filter((tag) => tag !== own)];
  const chosen = language !== undefined && tags.includes(language) ? language : own;
  return (
    // biome-ignore lint/a11y/useSemanticElements: words in a line are no set of fields.
    <div className="languages leaf-words word-list" role="group" aria-label={work("fill.language")}>
      {tags.map((tag) => (
        <WordButton key={tag} chosen={tag === chosen} lang={tag} onClick={() => onLanguage(tag)}>
          {nameOf(tag)}
        </WordButton>
      ))}
    </div>
  );
};
