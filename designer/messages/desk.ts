import { type Words, wordsOf } from "@roundbook/runner/form";
import { DESK_PAGES } from "./en.ts";

export const d: Words<typeof DESK_PAGES> = wordsOf(DESK_PAGES);
