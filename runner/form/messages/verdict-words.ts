import { VERDICT_WORDS } from "./en-verdicts.ts";
import { wordsOf } from "./words-of.ts";

/** Verdicts in words, for pages that load nothing else of the form. */
export const verdictWords = wordsOf(VERDICT_WORDS);
