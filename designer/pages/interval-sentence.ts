import {
  dateWords,
  durationWords,
  printNumber,
  printUnit,
  rruleWords,
  useMessages,
} from "@roundbook/runner/form";
import type { IntervalDefinition, IntervalRule } from "@roundbook/schemas";
import { parseDuration } from "@roundbook/schemas";
import { anyOf } from "../messages/any-of.ts";
import { iv } from "../messages/intervals.ts";
import { factorsOf } from "../model/interval-risk.ts";
import { useAssetTypes, useChecklists } from "./queries.ts";

type Said = Pick<IntervalDefinition, "rule" | "checklist" | "assetType">;

/** Days of a length, near enough to put lengths in order. */
const roughDays = (iso: string): number => {
  const { months = 0, days = 0 } = parseDuration(iso) ?? {};
  return months * 30.4 + days;
};

/** An interval as one sentence: "every 6 months from last done, 14 days before to 1 month after". */
export const useIntervalSentence = () => {
  const { t } = useMessages();
  const checklists = useChecklists().data;
  const types = useAssetTypes().data;
  const duration = (iso: string): string => durationWords(t, iso);
  const documentOf = (id: string) => checklists?.find((one) => one.id === id)?.document;
  const particularTitle = (type: string, name: string): string => {
    const known = types?.find(({ assetType }) => assetType === type)?.particulars[name]?.title;
    return known?.toLowerCase() ?? name;
  };
  const kindWords = (rule: IntervalRule, { checklist, assetType }: Said): string => {
    switch (rule.kind) {
      case "from-last-done":
        return iv("says.from-last-done", { every: duration(rule.every) });
      case "by-result": {
        const score = documentOf(checklist)?.scores?.[rule.score]?.title ?? rule.score;
        return iv("says.by-result", { score });
      }
      case "anniversary":
        return iv(`says.anniversary-${rule.afterLate}`, {
          every: duration(rule.every),
          within: duration(rule.within),
          anchor: rule.anchor === undefined ? "" : dateWords(rule.anchor),
        });
      case "each-period":
        return iv("says.each-period", {
          period: iv(`s.period-${rule.period}`),
          day: rule.day ?? "",
        });
      case "spacing":
        return iv("says.spacing", {
          min: duration(rule.min),
          max: duration(rule.max),
          every: duration(rule.every ?? rule.max),
        });
      case "recurrence":
        return rruleWords(rule.rrule);
      case "on-event": {
        const events = anyOf(rule.after.map((one) => iv(`event.${one}`)));
        const words = { events, blocks: rule.blocks ? "yes" : "" };
        return /[1-9]/.test(rule.within)
          ? iv("says.on-event", { ...words, within: duration(rule.within) })
          : iv("says.on-event-same", words);
      }
      case "on-usage":
        return iv("says.on-usage", {
          every: printNumber(rule.every),
          unit: printUnit(rule.unit),
          point:
            documentOf(rule.checklist ?? checklist)?.properties[rule.point]?.title ?? rule.point,
          after: rule.orAfter === undefined ? "" : duration(rule.orAfter),
        });
      case "by-risk": {
        const outcomes = rule.table.rules
          .map(({ then }) => String(then))
          .toSorted((a, b) => roughDays(a) - roughDays(b));
        const [least = "", most = least] = [outcomes[0], outcomes.at(-1)];
        const names = factorsOf(rule).map((name) => particularTitle(assetType, name));
        const words = { least: duration(least), factors: names.join(", ") };
        return least === most
          ? iv("says.by-risk-one", words)
          : iv("says.by-risk", { ...words, most: duration(most) });
      }
    }
  };
  return (said: Said): string => {
    const { rule } = said;
    const kind = kindWords(rule, said);
    const words =
      rule.neverAfter === undefined
        ? kind
        : iv("says.never-after", { rule: kind, limit: duration(rule.neverAfter) });
    const early = "early" in rule && typeof rule.early === "string" && duration(rule.early);
    const late = "late" in rule && typeof rule.late === "string" && duration(rule.late);
    const closed = rule.whenClosed === undefined ? "" : `; ${iv(`says.closed-${rule.whenClosed}`)}`;
    if (early && late) return iv("says.window", { rule: words, early, late }) + closed;
    if (early) return iv("says.early", { rule: words, early }) + closed;
    return (late ? iv("says.late", { rule: words, late }) : words) + closed;
  };
};
