import {
  type IntervalBody,
  type IntervalDefinition,
  type Problem,
  problem,
  ruleProblems,
} from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readNewestIssue } from "./read-checklists.ts";
import { readAssetTypes, readIntervals } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

async function problemsOf(ctx: Context, given: IntervalDefinition): Promise<Problem[]> {
  const problems: Problem[] = ruleProblems(given.rule).map((found) => ({
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
  const newest = await readNewestIssue(ctx, given.checklist);
  if (!newest) problems.push(problem("/checklist", "unknown-checklist"));
  else if (given.rule.kind === "by-result") {
    const scores = Object.keys(newest.document.scores ?? {});
    if (!scores.includes(given.rule.score))
      problems.push(
        problem("/rule/score", "unknown-score", { score: given.rule.score, known: scores }),
      );
  }
  return problems;
}

/** Sets a new interval, or changes the one named `interval`. */
export async function setInterval(
  ctx: Context,
  by: Session,
  { reason, ...definition }: IntervalBody,
  interval?: string,
): Promise<{ id: string }> {
  if (interval !== undefined) await mustExist(ctx, interval);
  const problems = await problemsOf(ctx, definition);
  if (problems.length > 0) throw new Refusal("invalid", "interval-not-right", problems);
  const id = interval ?? ctx.newId();
  await appendNow(ctx, by, {
    kind: "interval-set",
    asset: null,
    body: { interval: id, definition, ...(reason === undefined ? {} : { reason }) },
  });
  return { id };
}

export async function mustExist(ctx: Context, interval: string): Promise<void> {
  const rows = await readIntervals(ctx);
  if (!rows.some(({ id }) => id === interval)) throw new Refusal("not-found", "no-such-interval");
}
