/** Why an asset is due, and the parameters each sentence mentions. Dates are ISO 8601. */
export const DUE_CODES = {
  "never-done": ["date"],
  "from-last-done": ["every", "date", "entry"],
  "by-result": ["score", "next", "date", "entry"],
  "at-once": ["score", "date", "entry"],
  "no-interval-from-result": ["score", "date", "entry"],
  "brought-forward": ["every", "date", "entry"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type DueCode = keyof typeof DUE_CODES;
