import { type Words, wordsOf } from "../form/messages/words-of.ts";
import { KEEP_WORDS } from "./en-keep.ts";

/** Wording of what a device keeps. */
export const keep: Words<typeof KEEP_WORDS> = wordsOf(KEEP_WORDS);
