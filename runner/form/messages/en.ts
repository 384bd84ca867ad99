import { CODE_WORDS } from "./en-codes.ts";
import { FORM_WORDS } from "./en-form.ts";
import { VERDICT_WORDS } from "./en-verdicts.ts";

/** Every sentence of filling in and of the round, by code, in English. */
export const ENGLISH = { ...VERDICT_WORDS, ...FORM_WORDS, ...CODE_WORDS } as const;
export type MessageCode = keyof typeof ENGLISH;
