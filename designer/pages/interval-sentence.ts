import { durationWords, useMessages } from "@roundbook/runner/form";
import type { IntervalDefinition, IntervalRule } from "@roundbook/schemas";
import { d } from "../messages/desk.ts";
import { useChecklists } from "./queries.ts";

/** An interval as one sentence: "every 6 months from last done, 14 days before to 1 month after". */
export const useIntervalSentence = () => {
  const { t } = useMessages();
  const checklists = useChecklists().data;
  const scoreTitle = (checklist: string, score: string): string =>
    checklists?.find((one) => one.id === checklist)?.document.scores?.[score]?.title ?? score;
  const duration = (iso: string): string => durationWords(t, iso);
  const kindWords = (rule: IntervalRule, checklist: string): string => {
    switch (rule.kind) {
      case "from-last-done":
        return d("intervals.sentence", { every: duration(rule.every) });
      case "by-result":
        return d("intervals.sentence-result", { score: scoreTitle(checklist, rule.score) });
      case "anniversary":
        return d(`intervals.sentence-anniversary-${rule.afterLate}`, {
          every: duration(rule.every),
          within: duration(rule.within),
        });
      case "each-period":
        return rule.day === undefined
          ? d(`intervals.sentence-${rule.period}`)
          : d("intervals.sentence-day", {
              rule: d(`intervals.sentence-${rule.period}`),
              day: rule.day,
            });
      case "spacing":
        return d("intervals.sentence-spacing", {
          min: duration(rule.min),
          max: duration(rule.max),
          every: duration(rule.every ?? rule.max),
        });
      case "recurrence":
      case "on-event":
      case "on-usage":
      case "by-risk":
        return rule.kind;
    }
  };
  return ({ rule, checklist }: Pick<IntervalDefinition, "rule" | "checklist">): string => {
    const kind = kindWords(rule, checklist);
    const words =
      rule.neverAfter === undefined
        ? kind
        : d("intervals.sentence-never-after", { rule: kind, limit: duration(rule.neverAfter) });
    const closed =
      rule.whenClosed === undefined ? "" : `; ${d(`intervals.sentence-closed-${rule.whenClosed}`)}`;
    const early = "early" in rule && typeof rule.early === "string" && duration(rule.early);
    const late = "late" in rule && typeof rule.late === "string" && duration(rule.late);
    if (early && late) return d("intervals.sentence-window", { rule: words, early, late }) + closed;
    if (early) return d("intervals.sentence-early", { rule: words, early }) + closed;
    return (late ? d("intervals.sentence-late", { rule: words, late }) : words) + closed;
  };
};
