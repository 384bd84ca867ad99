import {
  type CivilDate,
  computeWindow,
  countsAsDone,
  type DoneRecord,
  type DueFacts,
  type HistoryEntry,
  hasDates,
  type IntervalRow,
  type IntervalRule,
} from "@roundbook/schemas";
import { dayOf } from "./due-of.tsx";
import { judgementOf } from "./overall-mark.tsx";

/** Time in which a check was missed, or was excused. */
export interface HistoryGap {
  readonly interval: string;
  readonly title: string;
  /** The check came once in each calendar month. */
  readonly monthly: boolean;
  /** The entry after which nothing came. */
  readonly after: string;
  /** The first day without it, and the last: null when it still lasts. */
  readonly from: CivilDate;
  readonly to: CivilDate | null;
  /** Latest days that passed meanwhile; only the first where the next follows from it being done. */
  readonly missed: readonly CivilDate[];
  /** Why it was excused. */
  readonly excused?: string;
}

/** What asked for them then is not known now: what happened, what meters showed, the particulars. */
const isToldAfterwards = ({ kind }: IntervalRule): boolean =>
  kind !== "on-event" && kind !== "on-usage" && kind !== "by-risk";

/** Dates stand by themselves, so that several can be missed one after another. */
const isSeries = (rule: IntervalRule): boolean =>
  rule.kind === "each-period" || rule.kind === "recurrence";

/** More than that are not counted out. */
const MOST_MISSED = 60;

/** What was done of an interval: by its own checklist, by a longer check, or from old papers. */
export const recordsOf = (
  rows: readonly HistoryEntry[],
  { definition: { checklist, title } }: IntervalRow,
): DoneRecord[] =>
  rows
    .flatMap((row): DoneRecord[] => {
      const { entry } = row;
      const base = {
        entry: entry.id,
        on: dayOf(entry.civilDate),
        at: entry.happenedAt === null ? null : Date.parse(entry.happenedAt),
      };
      if (entry.kind === "brought-forward" && entry.body.checklist === checklist)
        return [
          { ...base, on: dayOf(entry.body.doneOn), counts: false, next: {}, broughtForward: true },
        ];
      if (entry.kind !== "inspection") return [];
      const judgement = judgementOf(row);
      if (judgement === null) return [];
      if (entry.body.checklist.id !== checklist && !row.covered?.includes(title)) return [];
      const next = Object.fromEntries(
        Object.entries(judgement.scores).map(([name, score]) => [name, score.next]),
      );
      return [{ ...base, counts: countsAsDone(judgement), next }];
    })
    .filter(({ counts, broughtForward }) => counts || broughtForward)
    .sort((a, b) => a.on - b.on || (a.at ?? 0) - (b.at ?? 0) || (a.entry < b.entry ? -1 : 1));

const excusedFor = (window: ReturnType<typeof computeWindow>): string => {
  const step = window.why.moved?.find(({ code }) => code === "excused-while-closed");
  return typeof step?.params.reason === "string" ? step.params.reason : "";
};

/** What passed between one record and the next, by the windows as they stood in between. */
function between(
  rule: IntervalRule,
  facts: Omit<DueFacts, "done">,
  before: readonly DoneRecord[],
  next: CivilDate,
): { readonly missed: readonly CivilDate[]; readonly excused?: string } {
  const missed: CivilDate[] = [];
  let done = before;
  let excused: string | undefined;
  while (missed.length < MOST_MISSED) {
    const window = computeWindow(rule, { ...facts, done });
    if (window.undecided || !hasDates(window)) break;
    const { closure, latest } = window;
    if (closure?.status === "excused" && next >= closure.reopens) excused ??= excusedFor(window);
    if (latest >= next) break;
    missed.push(latest);
    if (!isSeries(rule)) break;
    done = [...done, { entry: "", on: latest, at: null, counts: true, next: {} }];
  }
  return { missed, ...(excused === undefined ? {} : { excused }) };
}

/**
 * Where an interval as it is now was not kept, told by its windows worked out anew after each record.
 * `next` is the day of the following record, or today.
 */
export function gapsOf(
  interval: IntervalRow,
  records: readonly DoneRecord[],
  facts: Omit<DueFacts, "done">,
  today: CivilDate,
): HistoryGap[] {
  const { title, rule } = interval.definition;
  if (!isToldAfterwards(rule) || facts.override !== undefined) return [];
  return records.flatMap((record, at) => {
    const following = records[at + 1];
    if (following !== undefined && following.on === record.on) return [];
    const found = between(rule, facts, records.slice(0, at + 1), following?.on ?? today);
    if (found.missed.length === 0 && found.excused === undefined) return [];
    return [
      {
        interval: interval.id,
        title,
        monthly: rule.kind === "each-period" && rule.period === "month",
        after: record.entry,
        from: (record.on + 1) as CivilDate,
        to: following === undefined ? null : ((following.on - 1) as CivilDate),
        ...found,
      },
    ];
  });
}
