import {
  type Block,
  type Checklist,
  lintChecklist,
  type Problem,
  resolveBlocks,
} from "@roundbook/schemas";
import { parseChecklist } from "@roundbook/schemas/validate";
import { formulas, patterns } from "./engines.ts";

/** No block is kept here yet: whatever a draft includes is told as unknown. */
const noBlock = (): Block | undefined => undefined;

export interface Findings {
  /** The document with its blocks taken in, when it is a well-formed checklist. */
  readonly checklist: Checklist | null;
  /** Everything there is to say, warnings included. */
  readonly problems: readonly Problem[];
}

/**
 * What stands between a document and its issue: form first, then the blocks it includes, then what
 * a schema cannot say.
 */
export function findProblems(document: unknown): Findings {
  const parsed = parseChecklist(document);
  if (!parsed.ok) return { checklist: null, problems: parsed.problems };
  const resolved = resolveBlocks(parsed.value, noBlock);
  if (resolved.ok)
    return {
      checklist: resolved.value,
      problems: lintChecklist(resolved.value, formulas, patterns),
    };
  // What the blocks lack is told already: the rest is linted as it stands.
  const { include: _, ...rest } = parsed.value;
  const problems = [...resolved.problems, ...lintChecklist(rest, formulas, patterns)];
  return { checklist: parsed.value, problems };
}
