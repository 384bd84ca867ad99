import {
  at,
  CALENDAR_SCHEMA,
  type CalendarData,
  type CivilDate,
  calendarOf,
  calendarProblems,
  type DueFacts,
  INSTANT,
  INTERVAL_RULE_SCHEMA,
  INTERVAL_SCHEMA,
  type IntervalDefinition,
  type IntervalRule,
  PARTICULAR_VALUES,
  type Problem,
  parseCivilDate,
  problem,
  type Result,
  ruleProblems,
} from "@roundbook/schemas";
import { compileSchema } from "@roundbook/schemas/validate";
import { bad, type Given, isObject } from "./answer-lines.ts";

const text = { type: "string", minLength: 1, maxLength: 200 } as const;
const day = { type: "string", maxLength: 10 } as const;
const instant = { type: "string", pattern: INSTANT } as const;
const list = (properties: object, required: readonly string[]) => ({
  type: "array",
  maxItems: 10_000,
  items: { type: "object", properties, required, additionalProperties: false },
});

const moment = { entry: text, on: day, at: instant } as const;
const done = {
  ...moment,
  counts: { type: "boolean" },
  next: { type: "object", additionalProperties: { type: ["string", "null"], maxLength: 40 } },
  broughtForward: { type: "boolean" },
  coveredBy: text,
} as const;

const lineSchema = (interval: object) => ({
  type: "object",
  properties: {
    interval,
    history: list(done, ["on"]),
    on: day,
    calendar: CALENDAR_SCHEMA,
    registered: day,
    particulars: PARTICULAR_VALUES,
    events: list({ ...moment, kind: { enum: ["repaired", "modified", "returned"] } }, [
      "kind",
      "on",
    ]),
    meter: list({ ...moment, value: { type: "number" }, unit: text }, ["on", "value", "unit"]),
    override: {
      type: "object",
      properties: { rule: INTERVAL_RULE_SCHEMA, reason: text, until: day },
      required: ["rule", "reason"],
      additionalProperties: false,
    },
  },
  required: ["interval", "history", "on"],
  additionalProperties: false,
});

interface Moment {
  readonly entry?: string;
  readonly on: string;
  readonly at?: string;
}
interface Written extends Moment {
  readonly counts?: boolean;
  readonly next?: Readonly<Record<string, string | null>>;
  readonly broughtForward?: boolean;
  readonly coveredBy?: string;
}
interface LineData {
  readonly interval: IntervalDefinition | IntervalRule;
  readonly history: readonly Written[];
  readonly on: string;
  readonly calendar?: CalendarData;
  readonly registered?: string;
  readonly particulars?: NonNullable<DueFacts["particulars"]>;
  readonly events?: readonly (Moment & { readonly kind: "repaired" | "modified" | "returned" })[];
  readonly meter?: readonly (Moment & { readonly value: number; readonly unit: string })[];
  readonly override?: {
    readonly rule: IntervalRule;
    readonly reason: string;
    readonly until?: string;
  };
}

const parseDefined = compileSchema<LineData>(lineSchema(INTERVAL_SCHEMA));
const parseBare = compileSchema<LineData>(lineSchema(INTERVAL_RULE_SCHEMA));

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
