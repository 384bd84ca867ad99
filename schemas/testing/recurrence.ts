import { formatCivilDate, parseCivilDate } from "../due/civil.ts";
import { occurrences } from "../due/rrule/occurrences.ts";
import { parseRrule } from "../due/rrule/parse-rrule.ts";
import type { Rrule } from "../due/rrule/rrule.ts";
import type { CivilDate } from "../shared/ids.ts";

/** For tests: a rule that is well formed. @throws Error with the problems of one that is not. */
export function rule(text: string): Rrule {
  const result = parseRrule(text);
  if (!result.ok) throw new Error(`${text}: ${JSON.stringify(result.problems)}`);
  return result.value;
}

/** For tests: a date that is one. */
export function day(iso: string): CivilDate {
  const date = parseCivilDate(iso);
  if (date === undefined) throw new Error(`${iso} is no date`);
  return date;
}

/** For tests: the first occurrences of a rule. */
export function firstOf(recurrence: Rrule, start: CivilDate, count: number): CivilDate[] {
  const found: CivilDate[] = [];
  for (const date of occurrences(recurrence, start)) {
    if (found.length === count) break;
    found.push(date);
  }
  return found;
}

/** For tests: the first occurrences of a rule, in ISO 8601 with blanks between. */
export const dates = (text: string, start: string, count: number): string =>
  firstOf(rule(text), day(start), count).map(formatCivilDate).join(" ");
