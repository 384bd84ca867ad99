import type { CivilDate } from "../../shared/ids.ts";
import type { Explanation } from "../../shared/problem.ts";
import { roundSignificant } from "../../shared/significant.ts";
import { formatCivilDate, LAST_CIVIL_DATE } from "../civil.ts";
import { addDuration } from "../duration.ts";
import type { DueFacts } from "../facts.ts";
import { type Mark, type Meter, meanRate, meterOf } from "../meter.ts";
import type { RuleOf } from "../rule-schema.ts";
import type { DoneRecord } from "../window.ts";
import { explain, facts, type Span, undecided } from "./span.ts";

type Rule = RuleOf<"on-usage">;

/** Far off is still a date, and not the one that stands for none. */
const FARTHEST = (LAST_CIVIL_DATE - 1) as CivilDate;

/** Where the marks since it was last done begin: its own, or the last before it; -1 when there is none. */
function startOf(marks: readonly Mark[], record: DoneRecord): number {
  const own = marks.findIndex(({ entry }) => entry === record.entry);
  if (own >= 0) return own;
  return marks.findLastIndex(({ on, at }) =>
    on === record.on && at !== null && record.at !== null ? at <= record.at : on <= record.on,
  );
}

interface Use {
  readonly since: readonly Mark[];
  readonly start: Mark;
  readonly last: Mark;
  /** The day the last mark is taken to stand for: that of the check, where nothing was read since. */
  readonly from: CivilDate;
  readonly rate: number | undefined;
}

/** Until it was read on two days since, it is taken to be used as it was before. */
function usageOf({ marks }: Meter, record: DoneRecord): Use | undefined {
  const begins = startOf(marks, record);
  const since = begins < 0 ? [] : marks.slice(begins);
  const [start, last] = [since[0], since.at(-1)];
  if (start === undefined || last === undefined) return undefined;
  const rate = last.on > start.on ? meanRate(since) : meanRate(marks);
  return { since, start, last, from: Math.max(last.on, record.on) as CivilDate, rate };
}

interface Day {
  readonly on: CivilDate;
  /** The reading that passed it; null when the day is expected by the rate. */
  readonly by: Mark | null;
}

/** When a meter reaches a value; undefined where it has not and no use is known. */
function reaches({ since, last, from, rate }: Use, value: number): Day | undefined {
  const by = since.find((mark) => mark.value >= value);
  if (by !== undefined) return { on: by.on, by };
  if (rate === undefined) return undefined;
  const days = Math.floor(roundSignificant((value - last.value) / rate));
  return { on: Math.min(from + days, FARTHEST) as CivilDate, by: null };
}

/** Nobody reads a meter closer than this. */
const figure = (value: number): number => Number(value.toPrecision(7));

function sentence(rule: Rule, record: DoneRecord, use: Use, day: Day, goal: number): Explanation {
  const { every, unit } = rule;
  const { value, on: read } = day.by ?? use.last;
  const params = {
    every,
    unit,
    ...facts(record),
    value: figure(value),
    read: formatCivilDate(read),
    at: figure(goal),
  };
  if (day.by !== null) return explain("usage-reached", params);
  return explain("by-usage", { ...params, rate: Number((use.rate ?? 0).toPrecision(3)) });
}

/**
 * Due when the meter has gone `every` further than it stood when it was last done: on the day of the
 * reading that passed it, else on the day expected by its mean use a day, and never later than
 * `orAfter`. Without a reading when it was done, or with neither a rate nor `orAfter`, it is undecided.
 */
export function onUsage(rule: Rule, { meter = [] }: DueFacts, record: DoneRecord): Span {
  const { every, early = 0, late = 0, unit, point, orAfter } = rule;
  const date = formatCivilDate(record.on);
  const shown = meterOf(meter, unit);
  const { replaced } = shown;
  const steps =
    replaced === null
      ? []
      : [explain("meter-replaced", { point, date: formatCivilDate(replaced.on) })];
  const use = usageOf(shown, record);
  const unknown = () => undecided(record, explain("needs-meter", { point, date }, steps));
  if (use === undefined) return unknown();
  const goal = roundSignificant(use.start.value + every);
  const day = reaches(use, goal);
  const limit = orAfter === undefined ? undefined : addDuration(record.on, orAfter);
  const orElse = (after: string, moved: readonly Explanation[] = []) =>
    explain("usage-or-after", { after, date }, moved);
  if (day === undefined) {
    if (limit === undefined || orAfter === undefined) return unknown();
    return { record, earliest: limit, due: limit, latest: limit, why: orElse(orAfter, steps) };
  }
  const bounded = (on: CivilDate): CivilDate =>
    limit === undefined ? on : (Math.min(on, limit) as CivilDate);
  const due = bounded(day.on);
  const why = sentence(rule, record, use, day, goal);
  const moved = [...steps, ...(orAfter !== undefined && due < day.on ? [orElse(orAfter)] : [])];
  return {
    record,
    earliest: bounded(reaches(use, roundSignificant(goal - early))?.on ?? due),
    due,
    latest: bounded(reaches(use, roundSignificant(goal + late))?.on ?? due),
    why: moved.length > 0 ? { ...why, moved } : why,
  };
}
