import type { ReactNode } from "react";
import { CountedSentence } from "./counted-sentence.tsx";
import { EventSentence } from "./event-sentence.tsx";
import { useInterval } from "./interval-desk.tsx";
import { PeriodSentence } from "./period-sentence.tsx";
import { RecurrenceSentence } from "./recurrence-sentence.tsx";
import { ResultSentence } from "./result-sentence.tsx";
import { RiskSentence } from "./risk-sentence.tsx";
import { SpacingSentence } from "./spacing-sentence.tsx";
import { UsageSentence } from "./usage-sentence.tsx";
import { EarlyEvent, UsageWindow, Window, YearlyWindow } from "./window-sentence.tsx";

/** How often, and the window around the day: what each kind of rule says of its own. */
export const RuleSentences = (): ReactNode => {
  const { rule } = useInterval().draft;
  switch (rule.kind) {
    case "from-last-done":
      return (
        <>
          <CountedSentence rule={rule} />
          <Window rule={rule} />
        </>
      );
    case "anniversary":
      return (
        <>
          <CountedSentence rule={rule} />
          <YearlyWindow rule={rule} />
        </>
      );
    case "each-period":
      return <PeriodSentence rule={rule} />;
    case "spacing":
      return <SpacingSentence rule={rule} />;
    case "recurrence":
      return (
        <>
          <RecurrenceSentence rule={rule} />
          <Window rule={rule} />
        </>
      );
    case "by-result":
      return (
        <>
          <ResultSentence rule={rule} />
          <Window rule={rule} />
        </>
      );
    case "by-risk":
      return (
        <>
          <RiskSentence rule={rule} />
          <Window rule={rule} />
        </>
      );
    case "on-usage":
      return (
        <>
          <UsageSentence rule={rule} />
          <UsageWindow rule={rule} />
        </>
      );
    case "on-event":
      return (
        <>
          <EventSentence rule={rule} />
          <EarlyEvent rule={rule} />
        </>
      );
  }
};
