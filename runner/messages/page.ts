import { type Words, wordsOf } from "../form/messages/words-of.ts";
import { PAGE_WORDS } from "./en.ts";

/** Wording of the round, of filling in, and of this device. */
export const w: Words<typeof PAGE_WORDS> = wordsOf(PAGE_WORDS);
