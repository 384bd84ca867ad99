import { type Words, wordsOf } from "@roundbook/runner/form";
import { ESTATE_WORDS } from "./en-estate.ts";

export const es: Words<typeof ESTATE_WORDS> = wordsOf(ESTATE_WORDS);
