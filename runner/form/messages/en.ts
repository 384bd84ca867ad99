import { CODE_WORDS } from "./en-codes.ts";
import { FORM_WORDS } from "./en-form.ts";

/** Every sentence the apps print, by code, in English. */
export const ENGLISH = { ...FORM_WORDS, ...CODE_WORDS } as const;
export type MessageCode = keyof typeof ENGLISH;
