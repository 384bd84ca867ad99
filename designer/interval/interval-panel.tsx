import { SentencePanel } from "@roundbook/runner/form";
import { iv } from "../messages/intervals.ts";
import { AboutSentences } from "./about-sentences.tsx";
import { BasisSentence, CommonSentences } from "./common-sentences.tsx";
import { CoversSentence } from "./covers-sentence.tsx";
import { useInterval } from "./interval-desk.tsx";
import { KindsList } from "./kinds-list.tsx";
import { RuleSentences } from "./rule-sentence.tsx";

/** An interval as sentences. */
export const IntervalPanel = () => (
  <>
    <SentencePanel label={iv("page.how")}>
      <AboutSentences />
      <RuleSentences />
      <CommonSentences rule={useInterval().draft.rule} />
      <CoversSentence />
      <BasisSentence />
    </SentencePanel>
    <KindsList />
  </>
);
