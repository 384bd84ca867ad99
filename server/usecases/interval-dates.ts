import {
  type CivilDate,
  computeWindow,
  type DatePreview,
  forecast,
  formatCivilDate,
  hasDates,
  type IntervalDates,
  type IntervalDefinition,
} from "@roundbook/schemas";
import { and, asc, eq, ne } from "drizzle-orm";
import { assets } from "../store/schema/register.ts";
import type { Context } from "./context.ts";
import { DUE_ASSET } from "./each-asset.ts";
import { dayAsked } from "./read-due.ts";
import { Refusal } from "./refusal.ts";
import { intervalProblems } from "./set-interval.ts";
import { suppose } from "./supposed-interval.ts";

const SHOWN = 10;

async function assetOf(ctx: Context, assetType: string, id: string | undefined) {
  const [asset] = await ctx.store.db
    .select(DUE_ASSET)
    .from(assets)
    .where(
      id === undefined
        ? and(eq(assets.assetType, assetType), ne(assets.status, "retired"))
        : eq(assets.id, id),
    )
    .orderBy(asc(assets.id))
    .limit(1);
  if (id !== undefined && asset === undefined) throw new Refusal("not-found", "no-such-asset");
  return asset;
}

/** The next dates of one asset, if an interval read so: what a manager looks at before saying it. */
export async function readIntervalDates(
  ctx: Context,
  definition: IntervalDefinition,
  asset?: string,
): Promise<IntervalDates> {
  const problems = await intervalProblems(ctx, definition, "");
  if (problems.length > 0) throw new Refusal("invalid", "interval-not-right", problems);
  const found = await assetOf(ctx, definition.assetType, asset);
  if (found === undefined) return { asset: null, dates: [], ends: null };
  const { read, variant } = await suppose(ctx.store.db, definition);
  const { facts } = (await read([found.id]))(found, variant);
  const from = (await dayAsked(ctx, undefined, found.site)) as CivilDate;
  const coming = forecast(definition.rule, facts, { from, count: SHOWN });
  const dates = coming.map(({ window, plain }): DatePreview => {
    const { earliest, due, latest, why } = window;
    return {
      earliest: formatCivilDate(earliest),
      due: formatCivilDate(due),
      latest: formatCivilDate(latest),
      ...(plain === due ? {} : { plain: formatCivilDate(plain) }),
      why,
    };
  });
  const now = computeWindow(definition.rule, facts);
  const { id, number, description } = found;
  return {
    asset: { id, number, description },
    dates,
    ends: hasDates(now) ? null : now.why,
  };
}
