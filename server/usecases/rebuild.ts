import { rebuildProjections } from "../store/projections/rebuild-projections.ts";
import type { Context } from "./context.ts";

export interface Rebuilt {
  readonly entries: number;
  readonly milliseconds: number;
  readonly perSecond: number;
}

/** Throws every projection away and derives it from the log again, in one transaction. */
export async function rebuild(ctx: Context): Promise<Rebuilt> {
  const start = ctx.clock();
  const entries = await ctx.store.write(rebuildProjections);
  const milliseconds = ctx.clock() - start;
  const perSecond = Math.round((entries * 1000) / Math.max(milliseconds, 1));
  return { entries, milliseconds, perSecond };
}
