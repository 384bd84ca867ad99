import { parseRrule } from "./parse-rrule.ts";
import type { Rrule } from "./rrule.ts";

/** An estate has few rules and asks them for every asset. */
const KEPT = 500;
const kept = new Map<string, Rrule>();

/** @throws RangeError for what is no rule; what users write is checked before it gets here. */
export function readRrule(text: string): Rrule {
  const known = kept.get(text);
  if (known !== undefined) return known;
  const parsed = parseRrule(text);
  if (!parsed.ok) throw new RangeError(`no recurrence rule: ${text}`);
  if (kept.size >= KEPT) kept.clear();
  kept.set(text, parsed.value);
  return parsed.value;
}
