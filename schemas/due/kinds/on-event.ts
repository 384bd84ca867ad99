import type { CivilDate } from "../../shared/ids.ts";
import { formatCivilDate } from "../civil.ts";
import { addDuration, subtractDuration } from "../duration.ts";
import type { DueEvent, DueFacts } from "../facts.ts";
import type { RuleOf } from "../rule-schema.ts";
import { type DoneRecord, NO_DATE } from "../window.ts";
import { explain, type Span } from "./span.ts";

type Rule = RuleOf<"on-event">;

interface Asked {
  readonly on: CivilDate;
  readonly earliest: CivilDate;
  readonly why: Span["why"];
}

/**
 * Whether a check answers an event: it came after it, on one date by the clock. Where the clock is
 * not known of both, nothing tells which came first, and the event still asks.
 */
const answers = (done: DoneRecord, event: DueEvent): boolean =>
  done.on === event.on
    ? done.at !== null && event.at !== null && done.at >= event.at
    : done.on > event.on;

/** The earlier of two events; a total order, so that the order they came in cannot matter. */
const isEarlier = (a: DueEvent, b: DueEvent): boolean =>
  a.on === b.on ? (a.at === b.at ? a.entry < b.entry : (a.at ?? 0) < (b.at ?? 0)) : a.on < b.on;

function afterEvent(rule: Rule, event: DueEvent): Asked {
  const { kind, on, entry } = event;
  const params = { within: rule.within, date: formatCivilDate(on), entry };
  return { on, earliest: on, why: explain(`after-${kind}`, params) };
}

/** The first reopening that no check has answered; early ones answer it where the rule allows. */
function afterReopening(rule: Rule, facts: DueFacts, last: CivilDate | null): Asked | undefined {
  const from = last === null ? facts.registered : ((last + 1) as CivilDate);
  for (let at = from; ; ) {
    const next = facts.calendar?.nextReopening(at);
    if (next === undefined) return undefined;
    const { on, since, reason } = next;
    // What was done before it closed says nothing of how it reopens.
    const early = rule.early === undefined ? on : Math.max(subtractDuration(on, rule.early), since);
    if (last === null || early > last) {
      const params = { within: rule.within, date: formatCivilDate(on), reason };
      return { on, earliest: early as CivilDate, why: explain("after-reopened", params) };
    }
    at = (on + 1) as CivilDate;
  }
}

/** Due `within` after the first event that no check has answered; without one there is no date. */
export function onEvent(rule: Rule, facts: DueFacts, record: DoneRecord | null): Span {
  let first: DueEvent | undefined;
  for (const event of facts.events ?? []) {
    if (!rule.after.includes(event.kind)) continue;
    if (record !== null && answers(record, event)) continue;
    if (first === undefined || isEarlier(event, first)) first = event;
  }
  const reopening = rule.after.includes("reopened")
    ? afterReopening(rule, facts, record?.on ?? null)
    : undefined;
  const asked =
    first === undefined || (reopening !== undefined && reopening.on < first.on)
      ? reopening
      : afterEvent(rule, first);
  if (asked === undefined) {
    const why = explain("no-event-yet", { after: rule.after });
    return { record, earliest: NO_DATE, due: NO_DATE, latest: NO_DATE, why };
  }
  const { on, earliest, why } = asked;
  const due = addDuration(on, rule.within);
  const closure = { status: "blocked", from: on, reopens: on } as const;
  return { record, earliest, due, latest: due, why, ...(rule.blocks === true ? { closure } : {}) };
}
