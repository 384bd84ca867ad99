import { durationWords, useMessages } from "@roundbook/runner/form";
import type { IntervalDefinition } from "@roundbook/schemas";
import { d } from "../messages/desk.ts";
import { useChecklists } from "./queries.ts";

/** An interval as one sentence: "every 6 months from last done, 14 days before to 1 month after". */
export const useIntervalSentence = () => {
  const { t } = useMessages();
  const checklists = useChecklists().data;
  const scoreTitle = (checklist: string, score: string): string =>
    checklists?.find((one) => one.id === checklist)?.document.scores?.[score]?.title ?? score;
  return ({ rule, checklist }: IntervalDefinition): string => {
    const words =
      rule.kind === "from-last-done"
        ? d("intervals.sentence", { every: durationWords(t, rule.every) })
        : d("intervals.sentence-result", { score: scoreTitle(checklist, rule.score) });
    const early = rule.early && durationWords(t, rule.early);
    const late = rule.late && durationWords(t, rule.late);
    if (early && late) return d("intervals.sentence-window", { rule: words, early, late });
    if (early) return d("intervals.sentence-early", { rule: words, early });
    return late ? d("intervals.sentence-late", { rule: words, late }) : words;
  };
};
