import { addDuration, durationOf } from "./duration.ts";
import { requireDate } from "./require-date.ts";
import { between } from "./rrule/occurrences.ts";
import { readRrule } from "./rrule/read-rrule.ts";
import type { IntervalRule, RuleOf } from "./rule-schema.ts";

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

/** How long a rule lets pass from one to the next at least and at most, in mean days. */
export interface Spread {
  readonly least: number;
  readonly most: number;
}

const always = (days: number): Spread => ({ least: days, most: days });

/** The days of the year come round in the week after so many years, but for a skipped leap year. */
const CYCLE = "P28Y";

/** The mean gap of a series over 28 years; null where it gives fewer than two days. */
function meanGap({ rrule, start }: RuleOf<"recurrence">): number | null {
  const from = requireDate(start);
  const days = between(readRrule(rrule), from, from, addDuration(from, CYCLE));
  const [first, last] = [days[0], days.at(-1)];
  return first === undefined || last === undefined || last === first
    ? null
    : (last - first) / (days.length - 1);
}

/**
 * How long a rule lets pass; null where a result, an event or the use says it.
 * @throws RangeError for a rule that `ruleProblems` refuses.
 */
export function spreadOf(rule: IntervalRule): Spread | null {
  switch (rule.kind) {
    case "from-last-done":
    case "anniversary":
      return always(meanDays(rule.every));
    case "each-period":
      return always(meanDays(PERIODS[rule.period]));
    case "spacing":
      return always(meanDays(rule.every ?? rule.max));
    case "by-risk": {
      const days = rule.table.rules.map((one) => meanDays(String(one.then)));
      return { least: Math.min(...days), most: Math.max(...days) };
    }
    case "recurrence": {
      const gap = meanGap(rule);
      return gap === null ? null : always(gap);
    }
    case "by-result":
    case "on-event":
    case "on-usage":
      return null;
  }
}
