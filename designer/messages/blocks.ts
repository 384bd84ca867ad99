import { type Words, wordsOf } from "@roundbook/runner/form";
import { BLOCK_WORDS } from "./en-blocks.ts";

export const b: Words<typeof BLOCK_WORDS> = wordsOf(BLOCK_WORDS);
