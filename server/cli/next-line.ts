import {
  at,
  type CivilDate,
  calendarOf,
  calendarProblems,
  type DueFacts,
  type IntervalRule,
  type Problem,
  parseCivilDate,
  problem,
  type Result,
  ruleProblems,
} from "@roundbook/schemas";
import { bad, type Given, isObject } from "./answer-lines.ts";
import { type LineData, type Moment, parseBare, parseDefined } from "./next-schema.ts";

/** A date on its own may stand for an inspection of that day. */
const spelledOut = ({ history, ...rest }: Given): Given => ({
  ...rest,
  ...(Array.isArray(history)
    ? { history: history.map((one: unknown) => (typeof one === "string" ? { on: one } : one)) }
    : history === undefined
      ? {}
      : { history }),
});

const prefixed = (pointer: string, problems: readonly Problem[]): Problem[] =>
  problems.map((one) => ({ ...one, pointer: `${pointer}${one.pointer}` }));

/** Dates and instants of a line that are none. */
function dateProblems(data: LineData): readonly Problem[] {
  const problems: Problem[] = [];
  const check = (pointer: string, date: string | undefined, isOne: boolean) => {
    if (date !== undefined && !isOne) problems.push(problem(pointer, "no-such-date", { date }));
  };
  const checkDay = (pointer: string, date: string | undefined) =>
    check(pointer, date, date !== undefined && parseCivilDate(date) !== undefined);
  checkDay("/on", data.on);
  checkDay("/registered", data.registered);
  checkDay("/override/until", data.override?.until);
  for (const name of ["history", "events", "meter"] as const)
    for (const [index, one] of (data[name] ?? []).entries()) {
      checkDay(at("", name, index, "on"), one.on);
      check(at("", name, index, "at"), one.at, !Number.isNaN(Date.parse(one.at ?? "")));
    }
  return problems;
}

function problemsOf(data: LineData, isDefined: boolean, rule: IntervalRule): readonly Problem[] {
  return [
    ...prefixed(isDefined ? "/interval/rule" : "/interval", ruleProblems(rule)),
    ...prefixed("/override/rule", data.override ? ruleProblems(data.override.rule) : []),
    ...prefixed("/calendar", calendarProblems(data.calendar ?? {})),
    ...dateProblems(data),
  ];
}

const dayOf = (iso: string): CivilDate => parseCivilDate(iso) as CivilDate;

function factsOf(data: LineData): DueFacts {
  const { history, calendar, particulars, events = [], meter = [], override } = data;
  const momentOf = ({ entry, on, at: time }: Moment, name: string, index: number) => ({
    entry: entry ?? `${name} ${String(index + 1).padStart(5, "0")}`,
    on: dayOf(on),
    at: time === undefined ? null : Date.parse(time),
  });
  const records = history.map((one, index) => {
    const { entry: _, on: __, at: ___, counts = true, next = {}, ...more } = one;
    return { ...momentOf(one, "history", index), counts, next, ...more };
  });
  const earliest = Math.min(dayOf(data.on), ...records.map(({ on }) => on));
  return {
    done: records,
    registered: data.registered === undefined ? (earliest as CivilDate) : dayOf(data.registered),
    events: events.map((one, index) => ({ ...momentOf(one, "events", index), kind: one.kind })),
    meter: meter.map((one, index) => ({
      ...momentOf(one, "meter", index),
      value: one.value,
      unit: one.unit,
    })),
    ...(particulars === undefined ? {} : { particulars }),
    ...(calendar === undefined ? {} : { calendar: calendarOf(calendar) }),
    ...(override === undefined
      ? {}
      : {
          override: {
            rule: override.rule,
            reason: override.reason,
            until: override.until === undefined ? null : dayOf(override.until),
          },
        }),
  };
}

export interface NextLine {
  readonly rule: IntervalRule;
  readonly facts: DueFacts;
  readonly on: CivilDate;
}

/**
 * Reads one line of `next`:
 * - `interval`: a rule, or a whole definition with its rule;
 * - `history`: what was done, each a date or `{on, at?, entry?, counts?, next?, broughtForward?,
 *   coveredBy?}`, in any order; `[]` when it was never done;
 * - `on`: the day its status is asked for;
 * - `calendar?`: `{weekdays?, holidays?, closures?, seasons?}`;
 * - `registered?`: a date; the first of the history, or `on`, when it is not given;
 * - `particulars?`, `events?: [{kind, on, at?}]`, `meter?: [{on, value, unit, at?}]`,
 *   `override?: {rule, reason, until?}`: read by the rules that need them.
 *
 * Dates are `2026-11-25`, instants `2026-11-25T09:30:00Z`. What is wrong is told by JSON Pointers
 * into the line.
 */
export function readNextLine(given: Given): Result<NextLine> {
  const isDefined = isObject(given.interval) && Object.hasOwn(given.interval, "rule");
  const parsed = (isDefined ? parseDefined : parseBare)(spelledOut(given));
  if (!parsed.ok) return parsed;
  const { value } = parsed;
  const rule = "rule" in value.interval ? value.interval.rule : value.interval;
  const problems = problemsOf(value, isDefined, rule);
  if (problems.length > 0) return bad(...problems);
  return { ok: true, value: { rule, facts: factsOf(value), on: dayOf(value.on) } };
}
