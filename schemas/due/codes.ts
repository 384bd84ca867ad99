/** Why an asset is due, and the parameters each sentence mentions. Dates are ISO 8601. */
export const DUE_CODES = {
  "never-done": ["date"],
  "first-due": ["first", "date"],
  "from-last-done": ["every", "date", "entry"],
  "by-result": ["score", "next", "date", "entry"],
  "at-once": ["score", "date", "entry"],
  "no-interval-from-result": ["score", "date", "entry"],
  "brought-forward": ["every", "date", "entry"],
  "anniversary-kept": ["every", "deadline", "anchor", "date", "entry"],
  "anniversary-kept-late": ["every", "deadline", "anchor", "date", "entry"],
  /** Of a fixed series, done before its window opened: the date does not move. */
  "anniversary-stands": ["every", "deadline", "anchor", "opens", "date", "entry"],
  "anniversary-restarted-early": ["every", "opens", "date", "entry"],
  "anniversary-restarted-late": ["every", "deadline", "date", "entry"],
  "each-week": ["date", "entry"],
  "each-month": ["date", "entry"],
  "each-quarter": ["date", "entry"],
  "each-half-year": ["date", "entry"],
  "each-year": ["date", "entry"],
  "by-spacing": ["min", "max", "date", "entry"],
  /** On the grid of a fixed date, never done yet. */
  "anniversary-first": ["every", "anchor"],
  recurrence: ["rrule", "date", "entry"],
  "recurrence-first": ["rrule", "start"],
  /** `reason` is a `RruleEnd`. */
  "recurrence-over": ["rrule", "reason"],
  "after-repaired": ["within", "date", "entry"],
  "after-modified": ["within", "date", "entry"],
  "after-returned": ["within", "date", "entry"],
  "after-reopened": ["within", "date", "reason"],
  "no-event-yet": ["after"],
  /** Read `value` on `read`; `rate` is use a day, `at` the value it is due at. */
  "by-usage": ["every", "unit", "date", "entry", "value", "read", "rate", "at"],
  "usage-reached": ["every", "unit", "date", "entry", "value", "read", "at"],
  "usage-or-after": ["after", "date"],
  /** Shows less on `date` than before: only what was read since counts. */
  "meter-replaced": ["point", "date"],
  "by-risk": ["every", "factors", "reason", "date", "entry"],
  /** Undecided. */
  "needs-particulars": ["names"],
  "needs-meter": ["point", "date"],
  "no-risk-rule": ["factors"],
  "risk-rules-conflict": ["factors"],
  override: ["reason", "until"],
  "override-over": ["reason", "until"],
  "done-too-soon": ["min", "date"],
  "never-after": ["limit", "date"],
  "covered-by-longer": ["title", "date"],
  "rolled-back": ["date", "closed", "reason"],
  "no-open-day": ["date", "closed", "reason"],
  "due-on-reopening": ["date", "closed", "reason"],
  "excused-while-closed": ["date", "closed", "reason"],
  "rolled-forward": ["date", "closed", "reason"],
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
  "covers-unknown": ["interval"],
  "covers-other-type": ["title"],
  "covers-itself": [],
  "covers-in-circle": ["titles"],
  "period-has-no-such-day": ["day", "most"],
  "no-such-date": ["date"],
  "rrule-gives-no-day": ["reason"],
  "margin-longer-than-gap": ["margin", "gap"],
  "risk-not-a-duration": ["text"],
  "risk-unknown-factor": ["name", "known"],
  "risk-factor-without-order": ["name"],
  "risk-order-incomplete": ["name", "values"],
  "risk-order-unknown": ["name", "values"],
  /** A worse factor gives a longer interval; `where` are the other factors of the example. */
  "risk-worse-is-longer": ["name", "mild", "worse", "milder", "longer", "where"],
  "usage-unknown-point": ["point", "known"],
  "usage-not-a-reading": ["point"],
  "usage-other-unit": ["unit", "pointUnit"],
  "margin-longer-than-usage": ["margin", "every"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type DueProblemCode = keyof typeof DUE_PROBLEM_CODES;
