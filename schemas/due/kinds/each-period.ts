import type { CivilDate } from "../../shared/ids.ts";
import { civilDate, civilParts, LAST_CIVIL_DATE, weekday } from "../civil.ts";
import type { DueCode } from "../codes.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, facts, type Span } from "./span.ts";

export type Period = RuleOf<"each-period">["period"];

const MONTHS = { month: 1, quarter: 3, "half-year": 6, year: 12 } as const;

/** First days of the period a day falls in and of the one after. */
export function periodOf(
  period: Period,
  day: CivilDate,
): { readonly first: CivilDate; readonly next: CivilDate } {
  if (period === "week") {
    const first = (day - weekday(day) + 1) as CivilDate;
    return { first, next: (first + 7) as CivilDate };
  }
  const { year, month } = civilParts(day);
  const length = MONTHS[period];
  const starts = month - ((month - 1) % length);
  const ends = starts + length;
  return {
    first: civilDate(year, starts, 1),
    next: ends > 12 ? civilDate(year + 1, 1, 1) : civilDate(year, ends, 1),
  };
}

/** Any day inside a period counts for it, and for no other. */
export function eachPeriod(rule: RuleOf<"each-period">, record: DoneRecord): Span {
  const { next } = periodOf(rule.period, record.on);
  const last = periodOf(rule.period, next).next - 1;
  const due = rule.day === undefined ? last : Math.min(next + rule.day - 1, last);
  const code: DueCode = `each-${rule.period}`;
  // At the end of the calendar a date stays one that can be written.
  const written = (day: number) => Math.min(day, LAST_CIVIL_DATE) as CivilDate;
  return {
    record,
    earliest: written(next),
    due: written(due),
    latest: written(last),
    why: explain(code, facts(record)),
  };
}
