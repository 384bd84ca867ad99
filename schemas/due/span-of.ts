import type { CivilDate } from "../shared/ids.ts";
import { formatCivilDate } from "./civil.ts";
import { addDuration, durationOf, subtractDuration } from "./duration.ts";
import type { DueFacts } from "./facts.ts";
import { anniversary, firstAnniversary, opens } from "./kinds/anniversary.ts";
import { byRisk, firstByRisk } from "./kinds/by-risk.ts";
import { eachPeriod } from "./kinds/each-period.ts";
import { byResult, fromLastDone } from "./kinds/from-record.ts";
import { onEvent } from "./kinds/on-event.ts";
import { onUsage } from "./kinds/on-usage.ts";
import { firstRecurrence, recurrence } from "./kinds/recurrence.ts";
import { lastSpaced, spacing } from "./kinds/spacing.ts";
import { explain, type Span } from "./kinds/span.ts";
import { doneDays, latestDay } from "./latest-day.ts";
import type { IntervalRule } from "./rule-schema.ts";
import type { DoneRecord } from "./window.ts";

const laterEntry = (a: DoneRecord | null, b: DoneRecord | null): boolean =>
  (a?.entry ?? "") > (b?.entry ?? "");

/** Which of two records of one civil date decides: a total order, so arrival order cannot matter. */
function outranks(a: Span, b: Span, ordered: boolean): boolean {
  if (ordered) {
    const [atA, atB] = [a.record?.at ?? 0, b.record?.at ?? 0];
    return atA === atB ? laterEntry(a.record, b.record) : atA > atB;
  }
  return a.due === b.due ? laterEntry(a.record, b.record) : a.due < b.due;
}

/** What the deciding record of one civil date says. */
function decide(day: readonly DoneRecord[], say: (record: DoneRecord) => Span): Span | undefined {
  // On one date an inspection says more than a date carried in from old papers.
  const inspections = day.filter((record) => record.broughtForward !== true);
  const records = inspections.length > 0 ? inspections : day;
  const ordered = records.every((record) => record.at !== null);
  let best: Span | undefined;
  for (const record of records) {
    const other = say(record);
    if (best === undefined || outranks(other, best, ordered)) best = other;
  }
  return best;
}

/** What a record of the last day done says; undefined when it was never done. */
function whenDone(rule: IntervalRule, facts: DueFacts): Span | undefined {
  const { done } = facts;
  const day = latestDay(done);
  switch (rule.kind) {
    case "from-last-done":
      return decide(day, (record) => fromLastDone(rule, record));
    case "by-result":
      return decide(day, (record) => byResult(rule, record));
    case "each-period":
      return decide(day, (record) => eachPeriod(rule, record));
    case "recurrence":
      return decide(day, (record) => recurrence(rule, record, facts.calendar));
    case "on-event":
      return decide(day, (record) => onEvent(rule, facts, record));
    case "on-usage":
      return decide(day, (record) => onUsage(rule, facts, record));
    case "by-risk":
      return decide(day, (record) => byRisk(rule, facts, record));
    case "anniversary": {
      const days = doneDays(done);
      return decide(day, (record) => anniversary(rule, days, record, facts.calendar));
    }
    case "spacing": {
      const days = doneDays(done);
      const counted = lastSpaced(rule.min, days);
      const last = days.at(-1);
      if (counted === undefined || last === undefined) return undefined;
      const then = last === counted ? day : latestDay(done.filter(({ on }) => on <= counted));
      return decide(then, (record) => spacing(rule, record, last));
    }
  }
}

/** The first date has the margins of every other. */
function marginsOf(rule: IntervalRule, due: CivilDate): Pick<Span, "earliest" | "latest"> {
  switch (rule.kind) {
    case "from-last-done":
    case "by-result":
    case "by-risk":
    case "recurrence": {
      const { early, late } = rule;
      return {
        earliest: early === undefined ? due : subtractDuration(due, early),
        latest: late === undefined ? due : addDuration(due, late),
      };
    }
    case "anniversary":
      return {
        earliest: opens(durationOf(rule.within), due),
        latest: rule.late === undefined ? due : addDuration(due, rule.late),
      };
    case "each-period":
    case "spacing":
    case "on-event":
    case "on-usage":
      return { earliest: due, latest: due };
  }
}

/** What happened to it, or how far it was used, asks before the time that a first check is given. */
function beforeFirst(rule: IntervalRule, facts: DueFacts): Span | undefined {
  if (rule.kind === "on-event") return onEvent(rule, facts, null);
  if (rule.kind !== "on-usage") return undefined;
  const { registered } = facts;
  const begun: DoneRecord = { entry: "", on: registered, at: null, counts: true, next: {} };
  const { orAfter: _, ...byUse } = rule;
  const span = onUsage(byUse, facts, firstRead(facts, begun));
  if (span.undecided === true) return undefined;
  const why = explain("never-done", { date: formatCivilDate(registered) });
  return { record: null, earliest: span.earliest, due: span.due, latest: span.latest, why };
}

/** Use is counted from the first reading that is known, where none was taken at the beginning. */
function firstRead({ meter = [], registered }: DueFacts, begun: DoneRecord): DoneRecord {
  const on = meter.reduce((first, one) => Math.min(first, one.on), Number.POSITIVE_INFINITY);
  return on > registered && on !== Number.POSITIVE_INFINITY
    ? { ...begun, on: on as CivilDate }
    : begun;
}

function neverDone(rule: IntervalRule, facts: DueFacts): Span {
  const { registered } = facts;
  const date = formatCivilDate(registered);
  const unknown = rule.kind === "by-risk" ? firstByRisk(rule, facts) : undefined;
  if (unknown !== undefined) return unknown;
  if (rule.first !== undefined) {
    const due = addDuration(registered, rule.first);
    const why = explain("first-due", { first: rule.first, date });
    const sooner = beforeFirst(rule, facts);
    return sooner !== undefined && (sooner.due <= due || sooner.closure?.status === "blocked")
      ? sooner
      : { record: null, ...marginsOf(rule, due), due, why };
  }
  switch (rule.kind) {
    case "recurrence":
      return firstRecurrence(rule, registered);
    case "on-event":
      return onEvent(rule, facts, null);
    case "anniversary":
      if (rule.anchor !== undefined) return firstAnniversary(rule, rule.anchor, registered);
      break;
    default:
      break;
  }
  const why = explain("never-done", { date });
  return { record: null, earliest: registered, due: registered, latest: registered, why };
}

/** What a rule makes of the facts, before what holds for every rule. */
export const spanOf = (rule: IntervalRule, facts: DueFacts): Span =>
  whenDone(rule, facts) ?? neverDone(rule, facts);
