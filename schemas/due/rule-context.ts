import type { Checklist, ParticularDefinitions } from "../checklist/meta-schema.ts";

export interface ContextChecklist {
  readonly id: string;
  /** Its newest issue. */
  readonly document: Checklist;
}

/** What a rule is checked against beside itself; what is not given is not looked at. */
export interface RuleContext {
  /** The particulars of the interval's asset type. */
  readonly particulars?: ParticularDefinitions;
  /** The interval's own checklist. */
  readonly checklist?: ContextChecklist;
  /** The checklist that the rule names to read its meter, where it is another one. */
  readonly metered?: ContextChecklist;
}
