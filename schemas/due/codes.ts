/** Why an asset is due, and the parameters each sentence mentions. Dates are ISO 8601. */
export const DUE_CODES = {
  "never-done": ["date"],
  "from-last-done": ["every", "date", "entry"],
  "by-result": ["score", "next", "date", "entry"],
  "at-once": ["score", "date", "entry"],
  "no-interval-from-result": ["score", "date", "entry"],
  "brought-forward": ["every", "date", "entry"],
  "anniversary-kept": ["every", "deadline", "anchor", "date", "entry"],
  "anniversary-kept-late": ["every", "deadline", "anchor", "date", "entry"],
  "anniversary-restarted-early": ["every", "opens", "date", "entry"],
  "anniversary-restarted-late": ["every", "deadline", "date", "entry"],
  "each-week": ["date", "entry"],
  "each-month": ["date", "entry"],
  "each-quarter": ["date", "entry"],
  "each-half-year": ["date", "entry"],
  "each-year": ["date", "entry"],
  "by-spacing": ["min", "max", "date", "entry"],
  "done-too-soon": ["min", "date"],
  "never-after": ["limit", "date"],
  "covered-by-longer": ["title", "date"],
  "rolled-back": ["date", "closed", "reason"],
  "no-open-day": ["date", "closed", "reason"],
  "due-on-reopening": ["date", "closed", "reason"],
  "excused-while-closed": ["date", "closed", "reason"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type DueCode = keyof typeof DUE_CODES;

/** What makes a rule impossible. */
export const DUE_PROBLEM_CODES = {
  "duration-of-nothing": [],
  "window-longer-than-interval": ["margin", "every"],
  "spacing-out-of-order": ["min", "max"],
  "longest-shorter-than-interval": ["limit", "every"],
  "covers-lacks-points": ["points"],
  "covers-not-longer": [],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type DueProblemCode = keyof typeof DUE_PROBLEM_CODES;
