import type { IntervalRule } from "./rule-schema.ts";

/** Rules by which more than time asks for a check: a length of time alone is no stand-in for them. */
export function hasTrigger({ kind }: IntervalRule): boolean {
  switch (kind) {
    case "by-result":
    case "on-event":
    case "on-usage":
    case "by-risk":
      return true;
    case "from-last-done":
    case "anniversary":
    case "each-period":
    case "spacing":
    case "recurrence":
      return false;
  }
}
