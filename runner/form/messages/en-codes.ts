/** Wording of every problem and explanation that `@roundbook/schemas` can give. */
export const CODE_WORDS = {
  "code.unknown": "This needs a newer Roundbook to be explained ({code}).",
} as const;
