import { type Words, wordsOf } from "@roundbook/runner/form";
import { PLAN_WORDS } from "./en-plan.ts";

export const pl: Words<typeof PLAN_WORDS> = wordsOf(PLAN_WORDS);
