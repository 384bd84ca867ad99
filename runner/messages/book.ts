import { BOOK_WORDS } from "./en-book.ts";
import { type Words, wordsOf } from "./words-of.ts";

/** Wording of the book's pages. */
export const book: Words<typeof BOOK_WORDS> = wordsOf(BOOK_WORDS);
