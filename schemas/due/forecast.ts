import type { CivilDate } from "../shared/ids.ts";
import { computeWindow } from "./compute-window.ts";
import type { DueFacts, MeterReading } from "./facts.ts";
import { needsHistory } from "./latest-day.ts";
import { meanRate, meterOf } from "./meter.ts";
import type { IntervalRule } from "./rule-schema.ts";
import { type DoneRecord, type DueWindow, hasDates } from "./window.ts";

export interface Coming {
  readonly window: DueWindow;
  /** Where it would fall without calendar, override and longest time; the due day where nowhere. */
  readonly plain: CivilDate;
}

export interface Horizon {
  /** What is overdue, undecided or never done is taken to be done on this day. */
  readonly from: CivilDate;
  readonly count?: number;
  /** The last day of interest, by due date. */
  readonly until?: CivilDate;
}

/** However far ahead is asked: nobody reads more, and daily rules come round. */
const MOST = 1000;

const plainOf = (rule: IntervalRule, facts: DueFacts, window: DueWindow): CivilDate => {
  const { calendar: _, override: __, ...bare } = facts;
  const { neverAfter: ___, ...free } = rule;
  const plain = computeWindow(free as IntervalRule, bare);
  return window.undecided || plain.undecided || !hasDates(plain) ? window.due : plain.due;
};

/** What the meter will show on a day, if it is used as much as since it was put in. */
function expectedReading(
  rule: IntervalRule,
  meter: readonly MeterReading[],
  on: CivilDate,
): MeterReading | undefined {
  if (rule.kind !== "on-usage") return undefined;
  const { marks } = meterOf(meter, rule.unit);
  const [last, rate] = [marks.at(-1), meanRate(marks)];
  if (last === undefined || rate === undefined) return undefined;
  const value = last.value + rate * Math.max(0, on - last.on);
  return { entry: `expected ${on}`, on, at: null, value, unit: rule.unit };
}

/** With what each meter is expected to show on a day: the rule's, and that of a rule of its own. */
function withReadings(rule: IntervalRule, known: DueFacts, on: CivilDate): DueFacts {
  const { meter = [], override } = known;
  const reading = expectedReading(rule, meter, on);
  const read = reading === undefined ? meter : [...meter, reading];
  if (override === undefined) return { ...known, meter: read };
  const own = override.meter ?? meter;
  const other = expectedReading(override.rule, own, on);
  const told = other === undefined ? own : [...own, other];
  return { ...known, meter: read, override: { ...override, meter: told } };
}

/** The next one is taken to come out as the last one did. */
const doneOn = (on: CivilDate, like: DoneRecord | undefined): DoneRecord => ({
  entry: `expected ${on}`,
  on,
  at: null,
  counts: true,
  next: like?.next ?? {},
});

const latestOf = (done: readonly DoneRecord[]): DoneRecord | undefined =>
  done
    .filter(({ counts }) => counts)
    .reduce<DoneRecord | undefined>(
      (last, one) => (last === undefined || one.on >= last.on ? one : last),
      undefined,
    );

/**
 * The dates to come by a rule, the one that stands first, each next one as if the one before were
 * done on its due day. Ends where there is no date, where nothing moves on, or at the horizon.
 */
export function forecast(
  rule: IntervalRule,
  facts: DueFacts,
  { from, count = MOST, until }: Horizon,
): readonly Coming[] {
  const coming: Coming[] = [];
  const like = latestOf(facts.done);
  const rules = facts.override === undefined ? [rule] : [rule, facts.override.rule];
  let known = facts;
  let last: CivilDate | undefined;
  while (coming.length < Math.min(count, MOST)) {
    const window = computeWindow(rule, known);
    if (!hasDates(window) || (until !== undefined && window.due > until)) break;
    const on = Math.max(window.due, from) as CivilDate;
    if (last !== undefined && on <= last) break;
    coming.push({ window, plain: plainOf(rule, known, window) });
    last = on;
    known = {
      ...withReadings(rule, known, on),
      done: [...(rules.some(needsHistory) ? known.done : []), doneOn(on, like)],
    };
  }
  return coming;
}
