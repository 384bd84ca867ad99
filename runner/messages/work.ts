import { WORK_WORDS } from "./en-work.ts";
import { type Words, wordsOf } from "./words-of.ts";

/** Wording of the pages behind the round. */
export const work: Words<typeof WORK_WORDS> = wordsOf(WORK_WORDS);
