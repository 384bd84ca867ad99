import { type Words, wordsOf } from "../form/messages/words-of.ts";
import { WORK_WORDS } from "./en-work.ts";

/** Wording of the pages behind the round. */
export const work: Words<typeof WORK_WORDS> = wordsOf(WORK_WORDS);
