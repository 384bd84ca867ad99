import { DESK_WORDS } from "./desk-words.ts";
import { DUE_WORDS } from "./due-words.ts";
import { IMPORT_WORDS } from "./import-words.ts";
import { JUDGE_WORDS } from "./judge-words.ts";
import { LINT_WORDS } from "./lint-words.ts";
import { SHAPE_WORDS } from "./shape-words.ts";

/**
 * The command line's wording of every code, by code; the apps have their own. `{name}` stands for a
 * parameter, and what stands in brackets is left out when a parameter in it is empty.
 */
export const WORDS: Readonly<Record<string, string>> = {
  ...DESK_WORDS,
  ...SHAPE_WORDS,
  ...LINT_WORDS,
  ...JUDGE_WORDS,
  ...DUE_WORDS,
  ...IMPORT_WORDS,
};
