import {
  type OverrideBody,
  type Problem,
  parseCivilDate,
  problem,
  ruleProblems,
} from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { overrides } from "../store/schema/due.ts";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readAsset } from "./read-assets.ts";
import { readIntervals } from "./read-register.ts";
import { Refusal } from "./refusal.ts";
import { ruleContext } from "./rule-context.ts";

async function mustApply(ctx: Context, asset: string, interval: string) {
  const found = await readAsset(ctx, asset);
  if (found === null) throw new Refusal("not-found", "no-such-asset");
  const rows = await readIntervals(ctx);
  const row = rows.find(({ id }) => id === interval);
  if (row === undefined || row.definition.assetType !== found.asset.assetType)
    throw new Refusal("not-found", "no-such-interval");
  return { id: found.asset.id, definition: row.definition };
}

/** Gives one asset a rule of its own by an interval, with its reason and perhaps its last day. */
export async function overrideInterval(
  ctx: Context,
  by: Session,
  asset: string,
  interval: string,
  given: OverrideBody,
): Promise<void> {
  const { id, definition } = await mustApply(ctx, asset, interval);
  const { rule, until } = given;
  const context = await ruleContext(ctx, { ...definition, rule });
  const problems: Problem[] = ruleProblems(rule, context).map((found) => ({
    ...found,
    pointer: `/rule${found.pointer}`,
  }));
  if (until !== undefined && parseCivilDate(until) === undefined)
    problems.push(problem("/until", "no-such-date", { date: until }));
  if (problems.length > 0) throw new Refusal("invalid", "interval-not-right", problems);
  await appendNow(ctx, by, {
    kind: "interval-overridden",
    asset: id,
    body: { interval, ...given },
  });
}

/** The asset follows the interval's own rule again. */
export async function endOverride(
  ctx: Context,
  by: Session,
  asset: string,
  interval: string,
  reason: string,
): Promise<void> {
  const { id } = await mustApply(ctx, asset, interval);
  const rows = await ctx.store.db.select().from(overrides).where(eq(overrides.asset, id));
  if (!rows.some((row) => row.interval === interval && row.rule !== null))
    throw new Refusal("not-found", "no-such-override");
  await appendNow(ctx, by, { kind: "override-ended", asset: id, body: { interval, reason } });
}
