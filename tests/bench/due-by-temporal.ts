import { type CivilDate, formatCivilDate } from "@roundbook/schemas";
import { Temporal } from "temporal-polyfill";
import { type DueCase, isShut } from "./due-mix.ts";

const { PlainDate } = Temporal;
type Day = Temporal.PlainDate;

/** A window as a computation with Temporal has it: dates alone, without a word of why. */
export interface TemporalWindow {
  readonly earliest: Day;
  readonly due: Day;
  readonly latest: Day;
}

const EPOCH = PlainDate.from("1970-01-01");
const dayNumber = (day: Day): CivilDate => EPOCH.until(day).days as CivilDate;
const after = (a: Day, b: Day): boolean => PlainDate.compare(a, b) > 0;

/** Days are kept by number, in the register as here: each is made once. */
const made = new Map<number, Day>();
function dayOf(day: CivilDate): Day {
  const known = made.get(day) ?? PlainDate.from(formatCivilDate(day));
  made.set(day, known);
  return known;
}

const durations = new Map<string, Temporal.Duration>();
function durationOf(iso: string): Temporal.Duration {
  const known = durations.get(iso) ?? Temporal.Duration.from(iso);
  durations.set(iso, known);
  return known;
}

const addTimes = (day: Day, every: string, times: number): Day => {
  const { years, months, weeks, days } = durationOf(every);
  return day.add({
    years: years * times,
    months: months * times,
    weeks: weeks * times,
    days: days * times,
  });
};

function anniversary(
  done: readonly Day[],
  every: string,
  within: string,
  keepsLate: boolean,
): TemporalWindow {
  let [anchor = EPOCH] = done;
  let cycle = 1;
  for (const day of done.slice(1)) {
    const deadline = addTimes(anchor, every, cycle);
    const opens = deadline.subtract(durationOf(within));
    if (after(opens, day) || (after(day, deadline) && !keepsLate)) [anchor, cycle] = [day, 1];
    else
      while (!after(addTimes(anchor, every, cycle).subtract(durationOf(within)), day)) cycle += 1;
  }
  const due = addTimes(anchor, every, cycle);
  return { earliest: due.subtract(durationOf(within)), due, latest: due };
}

function spanOf({ rule, facts }: DueCase): TemporalWindow {
  const days = () => facts.done.map(({ on }) => dayOf(on));
  const last = dayOf(facts.done.at(-1)?.on ?? (0 as CivilDate));
  switch (rule.kind) {
    case "from-last-done": {
      const due = last.add(durationOf(rule.every));
      return {
        earliest: rule.early === undefined ? due : due.subtract(durationOf(rule.early)),
        due,
        latest: rule.late === undefined ? due : due.add(durationOf(rule.late)),
      };
    }
    case "anniversary":
      return anniversary(days(), rule.every, rule.within, rule.afterLate === "keep");
    case "each-period": {
      const earliest = last.with({ day: 1 }).add({ months: 1 });
      const due = earliest.add({ months: 1 }).subtract({ days: 1 });
      return { earliest, due, latest: due };
    }
    case "spacing": {
      const done = days();
      let [counted = EPOCH] = done;
      for (const day of done) if (!after(counted.add(durationOf(rule.min)), day)) counted = day;
      const due = counted.add(durationOf(rule.every ?? rule.max));
      return {
        earliest: counted.add(durationOf(rule.min)),
        due,
        latest: counted.add(durationOf(rule.max)),
      };
    }
    case "recurrence": {
      let due = last.with({ day: 15 });
      while (!after(due.subtract(durationOf(rule.early ?? "P0D")), last))
        due = due.add({ months: 1 });
      return { earliest: due.subtract(durationOf(rule.early ?? "P0D")), due, latest: due };
    }
    case "by-risk": {
      const { environment, class: one } = facts.particulars ?? {};
      const found = rule.table.rules.find(({ when }) => when[0] === environment && when[1] === one);
      const due = last.add(durationOf(String(found?.then)));
      return { earliest: due, due, latest: due };
    }
    default:
      throw new Error(`${rule.kind} is not in the mix`);
  }
}

/** The last open day up to one, or undefined when there is none from the floor on. */
function lastOpen(day: Day, floor: Day): Day | undefined {
  for (let open = day; !after(floor, open); open = open.subtract({ days: 1 }))
    if (!isShut(dayNumber(open))) return open;
  return undefined;
}

/** The same window with Temporal, rolled back from days that are shut. */
export function windowByTemporal(one: DueCase): TemporalWindow {
  const span = spanOf(one);
  const { rule, facts } = one;
  if (facts.calendar === undefined) return span;
  const next = dayOf(((facts.done.at(-1)?.on ?? 0) + 1) as CivilDate);
  const anyTime = rule.kind === "from-last-done" || rule.kind === "by-risk";
  const floor = anyTime || after(next, span.earliest) ? next : span.earliest;
  const due = lastOpen(span.due, floor);
  if (due === undefined) return span;
  return { ...span, due, latest: lastOpen(span.latest, due) ?? due };
}
