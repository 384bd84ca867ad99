import {
  type CivilDate,
  type Explanation,
  type ProblemParam,
  parseCivilDate,
} from "@roundbook/schemas";
import { dayAndMonth } from "./dates.ts";
import { durationWords } from "./duration-words.ts";
import type { Messages } from "./messages.tsx";
import { rruleWords } from "./rrule-words.ts";

const DATES = new Set(["date", "deadline", "anchor", "opens", "closed", "start", "read", "until"]);
const DURATIONS = new Set(["every", "next", "min", "max", "limit", "first", "within", "after"]);

/** Why an asset is due: dates and durations are data in the explanation and words here. */
export function whyWords(messages: Messages, why: Explanation, today?: CivilDate): string {
  const word = (name: string, value: ProblemParam): ProblemParam => {
    if (typeof value !== "string") return value;
    if (name === "rrule") return rruleWords(value);
    const day = DATES.has(name) ? parseCivilDate(value) : undefined;
    if (day !== undefined) return dayAndMonth(day, today);
    return DURATIONS.has(name) ? durationWords(messages.t, value) : value;
  };
  const params = Object.entries(why.params).map(([name, value]) => [name, word(name, value)]);
  const said = messages.say({ code: why.code, params: Object.fromEntries(params) });
  return [said, ...(why.moved ?? []).map((step) => whyWords(messages, step, today))].join(" ");
}
