import {
  type CivilDate,
  type Explanation,
  type ProblemParam,
  parseCivilDate,
} from "@roundbook/schemas";
import { dayAndMonth, longDay } from "./dates.ts";
import { durationWords } from "./duration-words.ts";
import type { Messages } from "./messages.tsx";
import { rruleForm, rruleWords } from "./rrule-words.ts";

const DATES = new Set(["date", "deadline", "anchor", "opens", "start", "read", "until"]);
const DURATIONS = new Set(["every", "next", "min", "max", "limit", "first", "within", "after"]);
/** Lists, and what they are joined with: all that is lacking, any of what may happen. */
const LISTS: Readonly<Record<string, string>> = { names: "and", factors: "and", after: "or" };

const EVENTS: Readonly<Record<string, string>> = {
  repaired: "a repair",
  modified: "a modification",
  returned: "its return to service",
  reopened: "a reopening",
};

const listed = (words: readonly string[], joint: string): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${joint} ${words.at(-1)}`;

/** "environment: workshop" with the title of its particular. */
const factorWords = (factor: string, title: (name: string) => string): string => {
  const at = factor.indexOf(": ");
  if (at < 0) return title(factor).toLowerCase();
  const value = factor.slice(at + 2);
  const said = value === "true" ? "yes" : value === "false" ? "no" : value;
  return `${title(factor.slice(0, at)).toLowerCase()} ${said}`;
};

/** The day is named with its weekday, so a reason that is the weekday says nothing more. */
const reasonBeside = (reason: ProblemParam, closed: string): ProblemParam =>
  typeof reason === "string" && closed.startsWith(`${reason} `) ? null : reason;

/**
 * Why an asset is due: dates and durations are data in the explanation and words here. What moved a
 * date follows what set it. `title` tells what a particular is called.
 */
export function whyWords(
  messages: Messages,
  why: Explanation,
  today?: CivilDate,
  title: (name: string) => string = (name) => name,
): string {
  const one = (name: string, value: string): string => {
    if (name === "after") return EVENTS[value] ?? value;
    return name === "factors" ? factorWords(value, title) : title(value).toLowerCase();
  };
  const word = (name: string, value: ProblemParam): ProblemParam => {
    const joint = LISTS[name];
    if (joint !== undefined && Array.isArray(value))
      return listed(
        value.map((part) => one(name, String(part))),
        joint,
      );
    if (name === "rate" && typeof value === "number") return Number(value.toPrecision(2));
    if (typeof value !== "string") return value;
    if (name === "rrule")
      return rruleForm(value) === null ? "on the dates of its series" : rruleWords(value);
    const day = name === "closed" || DATES.has(name) ? parseCivilDate(value) : undefined;
    if (day !== undefined && name === "closed") return longDay(day, today);
    if (day !== undefined) return dayAndMonth(day, today);
    if (name === "within" && value === "P0D") return "At once";
    return DURATIONS.has(name) ? durationWords(messages.t, value) : value;
  };
  const params = Object.fromEntries(
    Object.entries(why.params).map(([name, value]) => [name, word(name, value)]),
  );
  if (typeof params.closed === "string")
    params.reason = reasonBeside(params.reason ?? null, params.closed);
  const said = messages.say({ code: why.code, params });
  return [said, ...(why.moved ?? []).map((step) => whyWords(messages, step, today, title))].join(
    " ",
  );
}
