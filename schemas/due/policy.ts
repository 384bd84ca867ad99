import type { CivilDate } from "../shared/ids.ts";
import { type Calendar, firstOpen, LONGEST_CLOSURE, lastOpen, type ShutDay } from "./calendar.ts";
import type { OnDayOff, WhenClosed } from "./rule-schema.ts";

export type Policy = WhenClosed | OnDayOff;

interface Policies {
  readonly onDayOff?: OnDayOff;
  readonly whenClosed?: WhenClosed;
}

/** What a rule makes of a date on a day that is shut. */
export const policyFor = (rule: Policies, shut: ShutDay | null): Policy =>
  (shut?.kind === "closure" ? rule.whenClosed : rule.onDayOff) ?? "roll-back";

/** The day by which a date is done that rolls back off a shut day; the date itself where it does not. */
export function rolledBack(rule: Policies, date: CivilDate, calendar?: Calendar): CivilDate {
  const shut = calendar?.shut(date) ?? null;
  if (calendar === undefined || shut === null) return date;
  const policy = policyFor(rule, shut);
  if (policy !== "roll-back" && policy !== "bring-forward") return date;
  return lastOpen(calendar, date, (date - LONGEST_CLOSURE) as CivilDate) ?? date;
}

/** The day that a date is put off to from a shut day; the date itself where it is not. */
export function putOff(rule: Policies, date: CivilDate, calendar?: Calendar): CivilDate {
  const shut = calendar?.shut(date) ?? null;
  if (calendar === undefined || shut === null) return date;
  switch (policyFor(rule, shut)) {
    case "roll-forward":
    case "on-reopening":
    case "excused":
      return firstOpen(calendar, date) ?? date;
    case "roll-back":
    case "bring-forward":
    case "due-anyway":
      return date;
  }
}
