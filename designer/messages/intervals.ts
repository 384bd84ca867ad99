import { type Words, wordsOf } from "@roundbook/runner/form";
import { INTERVAL_WORDS } from "./en-intervals.ts";

export const iv: Words<typeof INTERVAL_WORDS> = wordsOf(INTERVAL_WORDS);
