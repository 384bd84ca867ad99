import { ENGLISH } from "./en.ts";
import { CHECKLIST_WORDS } from "./en-checklist.ts";
import { DESK_WORDS } from "./en-desk.ts";
import { IMPORT_WORDS } from "./en-import.ts";
import { type Messages, messagesOf } from "./messages.tsx";

/**
 * With the wording of what is wrong in checklists, entries and files beside that of the round:
 * apart, so that a round's first screen does not wait for sentences of the desk.
 */
export const deskEnglish: Messages = messagesOf({
  ...ENGLISH,
  ...CHECKLIST_WORDS,
  ...IMPORT_WORDS,
  ...DESK_WORDS,
});
