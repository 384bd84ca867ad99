import { DUE_WORDS } from "./words/due-words.ts";
import { IMPORT_WORDS } from "./words/import-words.ts";
import { JUDGE_WORDS } from "./words/judge-words.ts";
import { SHAPE_WORDS } from "./words/shape-words.ts";

/** The command line's wording of every code, by code; the apps have their own. */
export const WORDS: Readonly<Record<string, string>> = {
  ...SHAPE_WORDS,
  ...JUDGE_WORDS,
  ...DUE_WORDS,
  ...IMPORT_WORDS,
};
