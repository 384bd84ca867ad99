import { type Words, wordsOf } from "@roundbook/runner/form";
import { EDITOR_WORDS } from "./en-editor.ts";

export const e: Words<typeof EDITOR_WORDS> = wordsOf(EDITOR_WORDS);
