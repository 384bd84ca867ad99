import { type Checklist, lintChecklist, type Problem, resolveBlocks } from "@roundbook/schemas";
import { parseChecklist } from "@roundbook/schemas/validate";
import { formulas, patterns } from "./engines.ts";
import type { KnownBlocks } from "./known-blocks.ts";

export interface Findings {
  /** The document with its blocks taken in, when it is a well-formed checklist. */
  readonly checklist: Checklist | null;
  /** Everything there is to say, warnings included. */
  readonly problems: readonly Problem[];
}

/**
 * What stands between a document and its issue: form first, then the blocks it includes, then the
 * form of the whole, which they may have outgrown, then what a schema cannot say.
 */
export function findProblems(document: unknown, blocks: KnownBlocks): Findings {
  const parsed = parseChecklist(document);
  if (!parsed.ok) return { checklist: null, problems: parsed.problems };
  const resolved = resolveBlocks(parsed.value, (name) => blocks.get(name), [...blocks.keys()]);
  if (resolved.ok) {
    const whole = parsed.value.include ? parseChecklist(resolved.value) : resolved;
    if (!whole.ok) return { checklist: null, problems: whole.problems };
    return { checklist: whole.value, problems: lintChecklist(whole.value, formulas, patterns) };
  }
  // What the blocks lack is told already: the rest is linted as it stands.
  const { include: _, ...rest } = parsed.value;
  const problems = [...resolved.problems, ...lintChecklist(rest, formulas, patterns)];
  return { checklist: parsed.value, problems };
}
