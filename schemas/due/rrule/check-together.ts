import type { Part, Report } from "./read-parts.ts";
import type { Frequency, Rrule } from "./rrule.ts";

/** RFC 5545 §3.3.10: the frequencies beside which a part MUST NOT stand. */
const NOT_WITH: Readonly<Record<string, readonly Frequency[]>> = {
  BYWEEKNO: ["DAILY", "WEEKLY", "MONTHLY"],
  BYYEARDAY: ["DAILY", "WEEKLY", "MONTHLY"],
  BYMONTHDAY: ["WEEKLY"],
};

const PICKED_FROM = ["BYMONTH", "BYWEEKNO", "BYYEARDAY", "BYMONTHDAY", "BYDAY"];

/** What parts must not say together. */
export function checkTogether(
  parts: ReadonlyMap<string, Part>,
  { freq, byDay }: Rrule,
  report: Report,
): void {
  const until = parts.get("UNTIL");
  if (until !== undefined && parts.has("COUNT"))
    report("rrule-count-and-until", { start: until.start, end: until.end });

  for (const [name, frequencies] of Object.entries(NOT_WITH)) {
    const part = parts.get(name);
    // Without a readable frequency the complaint would be about one that nobody wrote.
    if (part !== undefined && parts.get("FREQ")?.value === freq && frequencies.includes(freq))
      report("rrule-not-with-freq", { part: name, freq, start: part.start, end: part.end });
  }

  const days = parts.get("BYDAY");
  const counts = freq === "MONTHLY" || (freq === "YEARLY" && !parts.has("BYWEEKNO"));
  if (days !== undefined && !counts && byDay.some(({ nth }) => nth !== 0))
    report("rrule-ordinal-not-here", { start: days.start, end: days.end });

  const positions = parts.get("BYSETPOS");
  if (positions !== undefined && !PICKED_FROM.some((name) => parts.has(name)))
    report("rrule-setpos-alone", { start: positions.start, end: positions.end });
}
