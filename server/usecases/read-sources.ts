import { among } from "../store/among.ts";
import { sources } from "../store/schema/register.ts";
import type { Context } from "./context.ts";

/** What rows of files said when they were imported, by entry id; unknown ids are left out. */
export async function findSources(
  ctx: Context,
  ids: readonly string[],
): Promise<Map<string, { content: string; asset: string | null }>> {
  const rows = await ctx.store.db.select().from(sources).where(among(sources.entry, ids));
  return new Map(rows.map(({ entry, content, asset }) => [entry, { content, asset }]));
}
