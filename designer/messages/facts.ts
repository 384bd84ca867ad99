import { type Words, wordsOf } from "@roundbook/runner/form";
import { FACT_WORDS } from "./en-facts.ts";

export const f: Words<typeof FACT_WORDS> = wordsOf(FACT_WORDS);
