import type {
  AssetTypeRow,
  ChecklistRow,
  IntervalRow,
  IntervalRule,
  Problem,
  RuleOf,
} from "@roundbook/schemas";
import { createContext, useContext } from "react";
import { type IntervalDraft, type RuleKind, withMembers } from "../model/interval-draft.ts";

/** What every sentence of an interval works on. */
export interface IntervalDesk {
  readonly draft: IntervalDraft;
  /** The interval's own id; null before it was ever put in force. */
  readonly id: string | null;
  /** ISO civil date. */
  readonly today: string;
  readonly types: readonly AssetTypeRow[];
  readonly checklists: readonly ChecklistRow[];
  readonly intervals: readonly IntervalRow[];
  /** Pointers are into the definition. */
  readonly problems: readonly Problem[];
  /** Changes with one tag in a row are one step back. */
  apply(next: IntervalDraft, tag?: string): void;
}

const IntervalContext = createContext<IntervalDesk | null>(null);
export const IntervalProvider = IntervalContext.Provider;

export const useInterval = (): IntervalDesk => {
  const desk = useContext(IntervalContext);
  if (!desk) throw new Error("useInterval outside IntervalProvider");
  return desk;
};

/** Changes members of the rule a sentence shows; undefined takes one away. */
export const useRule = <Kind extends RuleKind>(rule: RuleOf<Kind>) => {
  const { draft, apply } = useInterval();
  return (members: Partial<RuleOf<Kind>>) =>
    apply({ ...draft, rule: withMembers<Kind>(rule, members) as IntervalRule });
};

/** The particulars of the interval's type. */
export const useParticulars = () => {
  const { draft, types } = useInterval();
  return types.find(({ assetType }) => assetType === draft.assetType)?.particulars ?? {};
};

export const useChecklist = (id: string): ChecklistRow | undefined =>
  useInterval().checklists.find((one) => one.id === id);
