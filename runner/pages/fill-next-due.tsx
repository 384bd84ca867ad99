import {
  type AssetRow,
  type CivilDate,
  calendarOf,
  computeWindow,
  countsAsDone,
  type DoneRecord,
  type DueWindow,
  hasDates,
  type IntervalRule,
  type Judgement,
  needsHistory,
  type RuleOverride,
  type SiteBundle,
} from "@roundbook/schemas";
import { Due, dueWords, Row, Rows, useMessages, whyWords } from "../form/index.ts";
import { work } from "../messages/work.ts";
import { dayOf } from "./due-of.tsx";

export interface NextWindow {
  readonly interval: string;
  readonly title: string;
  /** Null when this inspection moves no date, "later" when only its whole history tells the date. */
  readonly window: DueWindow | "later" | null;
}

/** What was done before, what happened to the asset or what its meters showed is not on the device. */
const isToldHere = (rule: IntervalRule): boolean => {
  if (needsHistory(rule) || rule.kind === "on-usage") return false;
  return rule.kind !== "on-event" || rule.after.every((event) => event === "reopened");
};

/** What an inspection that is finished today would make due next, by every interval of its checklist. */
export const nextWindows = (
  bundle: SiteBundle,
  given: {
    readonly asset: AssetRow;
    readonly checklist: string;
    readonly judgement: Judgement;
    readonly today: CivilDate;
    readonly at: number;
  },
): NextWindow[] => {
  const { asset, checklist, judgement, today, at } = given;
  const done: DoneRecord = {
    entry: "",
    on: today,
    at,
    counts: countsAsDone(judgement),
    next: Object.fromEntries(
      Object.entries(judgement.scores).map(([name, score]) => [name, score.next]),
    ),
  };
  const calendar = calendarOf(bundle.calendar);
  const own = (interval: string): RuleOverride | undefined => {
    const row = bundle.overrides.find((one) => one.asset === asset.id && one.interval === interval);
    return row && { ...row, until: row.until === null ? null : dayOf(row.until) };
  };
  return bundle.intervals
    .filter(
      ({ definition }) =>
        definition.assetType === asset.assetType && definition.checklist === checklist,
    )
    .map(({ id, definition: { title, rule } }) => {
      const override = own(id);
      const told = isToldHere(rule) && (override === undefined || isToldHere(override.rule));
      const facts = {
        done: [done],
        registered: dayOf(asset.registeredOn),
        calendar,
        particulars: asset.particulars,
        ...(override && { override }),
      };
      return {
        interval: id,
        title,
        window: !done.counts ? null : told ? computeWindow(rule, facts) : "later",
      };
    });
};

/** Each next window with the sentence that explains it. */
export const NextDue = ({
  windows,
  today,
}: {
  readonly windows: readonly NextWindow[];
  readonly today: CivilDate;
}) => {
  const messages = useMessages();
  return (
    <Rows>
      {windows.map(({ interval, title, window }) => (
        <Row
          key={interval}
          name={title}
          second={
            window === null
              ? work("fill.stays", { title })
              : window === "later"
                ? work("fill.later")
                : whyWords(messages, window.why, today)
          }
          due={
            window !== null &&
            window !== "later" &&
            hasDates(window) && (
              <Due {...window} today={today}>
                {dueWords(window, today)}
              </Due>
            )
          }
        />
      ))}
    </Rows>
  );
};
