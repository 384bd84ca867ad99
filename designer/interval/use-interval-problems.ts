import {
  type AssetTypeRow,
  type ChecklistRow,
  type IntervalRow,
  type Problem,
  type RuleContext,
  ruleProblems,
} from "@roundbook/schemas";
import { useMemo } from "react";
import { coverProblems } from "../model/interval-covers.ts";
import type { IntervalDraft } from "../model/interval-draft.ts";

const contextOf = (
  { assetType, checklist, rule }: IntervalDraft,
  types: readonly AssetTypeRow[],
  checklists: readonly ChecklistRow[],
): RuleContext => {
  const particulars = types.find((one) => one.assetType === assetType)?.particulars;
  const own = checklists.find(({ id }) => id === checklist);
  const named = rule.kind === "on-usage" ? rule.checklist : undefined;
  const metered = checklists.find(({ id }) => id === named);
  return {
    ...(particulars ? { particulars } : {}),
    ...(own ? { checklist: own } : {}),
    ...(metered ? { metered } : {}),
  };
};

/** What cannot be in an interval as it is written; pointers are into the definition. */
export const useIntervalProblems = (
  draft: IntervalDraft,
  id: string | null,
  known: {
    readonly types: readonly AssetTypeRow[];
    readonly checklists: readonly ChecklistRow[];
    readonly intervals: readonly IntervalRow[];
  },
  served: readonly Problem[],
): readonly Problem[] => {
  const { types, checklists, intervals } = known;
  return useMemo(() => {
    const rule = ruleProblems(draft.rule, contextOf(draft, types, checklists)).map((one) => ({
      ...one,
      pointer: `/rule${one.pointer}`,
    }));
    // What a rule that cannot be would cover is not asked.
    const covers = rule.length > 0 ? [] : coverProblems(draft, id, intervals, checklists);
    const own = [...rule, ...covers];
    const said = new Set(own.map(({ pointer, code }) => `${pointer} ${code}`));
    return [...own, ...served.filter(({ pointer, code }) => !said.has(`${pointer} ${code}`))];
  }, [draft, id, types, checklists, intervals, served]);
};
