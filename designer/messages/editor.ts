import { type Words, wordsOf } from "@roundbook/runner/form";
import { EDITOR_WORDS } from "./en-editor.ts";
import { KIND_WORDS } from "./en-kinds.ts";

const WORDS = { ...EDITOR_WORDS, ...KIND_WORDS };
export const e: Words<typeof WORDS> = wordsOf(WORDS);
