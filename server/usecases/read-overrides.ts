import { type CivilDate, formatCivilDate, type OverrideRow } from "@roundbook/schemas";
import { among } from "../store/among.ts";
import { overrides } from "../store/schema/due.ts";
import type { Context } from "./context.ts";

/** Rules of their own that stand for assets. */
export async function readOverrides(
  ctx: Context,
  assets: Iterable<string>,
): Promise<OverrideRow[]> {
  const rows = await ctx.store.db.select().from(overrides).where(among(overrides.asset, assets));
  return rows.flatMap(({ asset, interval, rule, reason, until }) =>
    rule === null
      ? []
      : {
          asset,
          interval,
          rule,
          reason,
          until: until === null ? null : formatCivilDate(until as CivilDate),
        },
  );
}
