import { durationOf } from "./duration.ts";
import type { IntervalRule } from "./rule-schema.ts";

const DAYS_PER_MONTH = 146_097 / 4800;

/** Days of a duration in mean months, so that P1M is longer than P30D and shorter than P31D. */
export const meanDays = (iso: string): number => {
  const { months, days } = durationOf(iso);
  return months * DAYS_PER_MONTH + days;
};

export const PERIODS = {
  week: "P1W",
  month: "P1M",
  quarter: "P3M",
  "half-year": "P6M",
  year: "P1Y",
} as const;

/** How long a rule lets pass from one to the next, in mean days; null where the result says it. */
export function meanInterval(rule: IntervalRule): number | null {
  switch (rule.kind) {
    case "from-last-done":
    case "anniversary":
      return meanDays(rule.every);
    case "each-period":
      return meanDays(PERIODS[rule.period]);
    case "spacing":
      return meanDays(rule.every ?? rule.max);
    case "by-risk":
      return Math.max(...rule.table.rules.map((one) => meanDays(String(one.then))));
    case "by-result":
    case "recurrence":
    case "on-event":
    case "on-usage":
      return null;
  }
}
