import {
  canonicalize,
  coversProblems,
  type IntervalBody,
  type IntervalDefinition,
  type Problem,
  problem,
  ruleProblems,
} from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readAssetTypes, readIntervals } from "./read-register.ts";
import { Refusal } from "./refusal.ts";
import { readDefined, ruleContext } from "./rule-context.ts";

/** What is wrong with a definition, its rule and what it covers; pointers are into it. */
export async function intervalProblems(
  ctx: Context,
  given: IntervalDefinition,
  interval: string,
): Promise<Problem[]> {
  const context = await ruleContext(ctx, given);
  const problems: Problem[] = ruleProblems(given.rule, context).map((found) => ({
    ...found,
    pointer: `/rule${found.pointer}`,
  }));
  const types = await readAssetTypes(ctx);
  if (!types.some(({ assetType }) => assetType === given.assetType))
    problems.push(
      problem("/assetType", "unknown-asset-type", {
        assetType: given.assetType,
        known: types.map((row) => row.assetType),
      }),
    );
  const { checklist } = context;
  if (checklist === undefined) problems.push(problem("/checklist", "unknown-checklist"));
  else {
    const { document } = checklist;
    if (given.rule.kind === "by-result") {
      const { score } = given.rule;
      const known = Object.keys(document.scores ?? {});
      if (!known.includes(score))
        problems.push(problem("/rule/score", "unknown-score", { score, known }));
    }
    if (problems.length > 0) return problems;
    problems.push(
      ...coversProblems({ id: interval, definition: given, document }, await readDefined(ctx)),
    );
  }
  return problems;
}

/**
 * Sets a new interval, or changes the one named `interval`.
 * @throws Refusal when it is not what `over` says any more: two managers must not undo each other unseen.
 */
export async function setInterval(
  ctx: Context,
  by: Session,
  { reason, over, ...definition }: IntervalBody,
  interval?: string,
): Promise<{ id: string }> {
  if (interval !== undefined) {
    const now = await mustExist(ctx, interval);
    if (over !== undefined && canonicalize(over) !== canonicalize(now))
      throw new Refusal("conflict", "interval-changed-meanwhile");
  }
  const id = interval ?? ctx.newId();
  const problems = await intervalProblems(ctx, definition, id);
  if (problems.length > 0) throw new Refusal("invalid", "interval-not-right", problems);
  await appendNow(ctx, by, {
    kind: "interval-set",
    asset: null,
    body: { interval: id, definition, ...(reason === undefined ? {} : { reason }) },
  });
  return { id };
}

/** The definition that was said last, whether its dates are worked out yet or not. */
export async function mustExist(ctx: Context, interval: string): Promise<IntervalDefinition> {
  const row = (await readIntervals(ctx)).find(({ id }) => id === interval);
  if (row === undefined) throw new Refusal("not-found", "no-such-interval");
  return row.progress?.definition ?? row.definition;
}
