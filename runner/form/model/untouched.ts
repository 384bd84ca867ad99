import type { Answers } from "@roundbook/schemas";

/** Nobody has answered anything, nor said why not. */
export const isUntouched = (answers: Answers): boolean => Object.keys(answers).length === 0;
