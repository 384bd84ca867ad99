import { at, type Problem, type ProblemParam, problem } from "../shared/problem.ts";
import type { DueProblemCode } from "./codes.ts";
import { meanDays } from "./mean-days.ts";
import type { IntervalRule } from "./rule-schema.ts";

const longer = (a: string, b: string): boolean => meanDays(a) > meanDays(b);

/** The durations of a rule that may not be nothing, by name. */
function lengths(rule: IntervalRule): Readonly<Record<string, string | undefined>> {
  const { neverAfter } = rule;
  switch (rule.kind) {
    case "from-last-done":
      return { every: rule.every, neverAfter };
    case "anniversary":
      return { every: rule.every, within: rule.within, neverAfter };
    case "spacing":
      return { min: rule.min, max: rule.max, every: rule.every, neverAfter };
    case "by-result":
    case "each-period":
    case "recurrence":
    case "on-event":
    case "on-usage":
    case "by-risk":
      return { neverAfter };
  }
}

/** What a rule asks that cannot be; pointers are into the rule. */
export function ruleProblems(rule: IntervalRule): Problem[] {
  const problems: Problem[] = [];
  const report = (
    name: string,
    code: DueProblemCode,
    params: Readonly<Record<string, ProblemParam>> = {},
  ) => problems.push(problem(at("", name), code, params));

  for (const [name, length] of Object.entries(lengths(rule)))
    if (length !== undefined && meanDays(length) === 0) report(name, "duration-of-nothing");

  if (rule.kind === "spacing") {
    const { min, max, every } = rule;
    if (longer(min, max)) report("max", "spacing-out-of-order", { min, max });
    else if (every !== undefined && (longer(min, every) || longer(every, max)))
      report("every", "spacing-out-of-order", { min, max });
  }
  if (rule.kind === "from-last-done" || rule.kind === "anniversary") {
    const { every, neverAfter, late } = rule;
    const margins =
      rule.kind === "anniversary" ? { within: rule.within, late } : { early: rule.early, late };
    for (const [name, margin] of Object.entries(margins))
      if (margin !== undefined && longer(margin, every))
        report(name, "window-longer-than-interval", { margin, every });
    if (neverAfter !== undefined && longer(every, neverAfter))
      report("neverAfter", "longest-shorter-than-interval", { limit: neverAfter, every });
  }
  return problems;
}
