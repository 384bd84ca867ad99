import {
  type CivilDate,
  computeWindow,
  countsAsDone,
  type DoneRecord,
  type DueWindow,
  type Judgement,
  needsHistory,
  type SiteBundle,
} from "@roundbook/schemas";
import { Due, dueWords, Row, Rows, useMessages, whyWords } from "../form/index.ts";
import { work } from "../messages/work.ts";

export interface NextWindow {
  readonly interval: string;
  readonly title: string;
  /** Null when this inspection moves no date, "later" when only its whole history tells the date. */
  readonly window: DueWindow | "later" | null;
}

/** What an inspection that is finished today would make due next, by every interval of its checklist. */
export const nextWindows = (
  bundle: SiteBundle,
  given: {
    readonly assetType: string;
    readonly checklist: string;
    readonly judgement: Judgement;
    readonly today: CivilDate;
    readonly at: number;
  },
): NextWindow[] => {
  const { assetType, checklist, judgement, today, at } = given;
  const done: DoneRecord = {
    entry: "",
    on: today,
    at,
    counts: countsAsDone(judgement),
    next: Object.fromEntries(
      Object.entries(judgement.scores).map(([name, score]) => [name, score.next]),
    ),
  };
  return bundle.intervals
    .filter(
      ({ definition }) => definition.assetType === assetType && definition.checklist === checklist,
    )
    .map(({ id, definition }) => ({
      interval: id,
      title: definition.title,
      window: !done.counts
        ? null
        : needsHistory(definition.rule)
          ? "later"
          : computeWindow(definition.rule, { done: [done], registered: today }),
    }));
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
            window !== "later" && (
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
