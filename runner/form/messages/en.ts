import { CHECKLIST_WORDS } from "./en-checklist.ts";
import { CODE_WORDS } from "./en-codes.ts";
import { FORM_WORDS } from "./en-form.ts";
import { IMPORT_WORDS } from "./en-import.ts";

/** Every sentence the apps print, by code, in English. */
export const ENGLISH = {
  ...FORM_WORDS,
  ...CODE_WORDS,
  ...CHECKLIST_WORDS,
  ...IMPORT_WORDS,
} as const;
export type MessageCode = keyof typeof ENGLISH;
