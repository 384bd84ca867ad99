import { type Checklist, lintChecklist, type Problem, usesFormulas } from "@roundbook/schemas";
import { createFormulaEngine } from "@roundbook/schemas/formulas";
import { parseChecklist } from "@roundbook/schemas/validate";

const formulas = createFormulaEngine();

export interface Findings {
  /** The document, when it is a well-formed checklist. */
  readonly checklist: Checklist | null;
  /** Everything there is to say, warnings included. */
  readonly problems: readonly Problem[];
}

/** What stands between a document and its issue: form first, then what a schema cannot say. */
export function findProblems(document: unknown): Findings {
  const parsed = parseChecklist(document);
  if (!parsed.ok) return { checklist: null, problems: parsed.problems };
  const checklist = parsed.value;
  const engine = usesFormulas(checklist) ? formulas : undefined;
  return { checklist, problems: lintChecklist(checklist, engine) };
}
