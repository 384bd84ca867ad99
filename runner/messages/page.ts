import { PAGE_WORDS } from "./en.ts";
import { type Words, wordsOf } from "./words-of.ts";

/** Wording of the round, of filling in, and of this device. */
export const w: Words<typeof PAGE_WORDS> = wordsOf(PAGE_WORDS);
