import { type Words, wordsOf } from "@roundbook/runner/form";
import { ROUNDS_WORDS } from "./en-rounds.ts";

export const ro: Words<typeof ROUNDS_WORDS> = wordsOf(ROUNDS_WORDS);
