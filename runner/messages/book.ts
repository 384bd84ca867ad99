import { type Words, wordsOf } from "../form/messages/words-of.ts";
import { BOOK_WORDS } from "./en-book.ts";

/** Wording of the book's pages. */
export const book: Words<typeof BOOK_WORDS> = wordsOf(BOOK_WORDS);
