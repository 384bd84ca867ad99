/**
 * What can be wrong with a recurrence rule, and the parameters each sentence mentions. `start` and
 * `end` are places in the text, counted in UTF-16 units from 0, `end` behind the last.
 */
export const RRULE_CODES = {
  "rrule-too-long": ["limit"],
  /** Not NAME=VALUE, or nothing between two semicolons. */
  "rrule-no-part": ["text", "start", "end"],
  "rrule-unknown-part": ["part", "nearest", "start", "end"],
  "rrule-repeated-part": ["part", "start", "end"],
  "rrule-no-freq": [],
  /** Rules here give days: nothing below a day has a meaning. */
  "rrule-sub-daily": ["part", "value", "start", "end"],
  "rrule-bad-value": ["part", "value", "nearest", "start", "end"],
  "rrule-out-of-range": ["part", "value", "least", "most", "start", "end"],
  "rrule-count-and-until": ["start", "end"],
  /** RFC 5545 §3.3.10 bars the part beside this frequency. */
  "rrule-not-with-freq": ["part", "freq", "start", "end"],
  /** RFC 5545 §3.3.10: "2MO" counts within months or years only, and not beside BYWEEKNO. */
  "rrule-ordinal-not-here": ["start", "end"],
  /** BYSETPOS picks from what another part beginning with BY gives. */
  "rrule-setpos-alone": ["start", "end"],
  "rrule-other-calendar": ["value", "start", "end"],
  /** RFC 7529 §4.1: SKIP stands beside RSCALE only. */
  "rrule-skip-without-rscale": ["start", "end"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type RruleCode = keyof typeof RRULE_CODES;
