import { type Words, wordsOf } from "../form/messages/words-of.ts";
import { PAPER_WORDS } from "./en-paper.ts";

/** Wording of checks on paper. */
export const paper: Words<typeof PAPER_WORDS> = wordsOf(PAPER_WORDS);
