import { type Words, wordsOf } from "../form/messages/words-of.ts";
import { ADD_WORDS } from "./en-add.ts";

/** Wording of adding, copying and moving assets. */
export const add: Words<typeof ADD_WORDS> = wordsOf(ADD_WORDS);
