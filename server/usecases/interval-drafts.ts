import type { IntervalDraftRow, SaveIntervalDraft } from "@roundbook/schemas";
import { desc, eq } from "drizzle-orm";
import { intervalDrafts } from "../store/schema/estate.ts";
import type { Context, Session } from "./context.ts";
import { instantOf } from "./instant-of.ts";
import { Refusal } from "./refusal.ts";

type Stored = typeof intervalDrafts.$inferSelect;

const draftRow = ({ id, revision, definition, changedAt }: Stored): IntervalDraftRow => ({
  id,
  revision,
  definition: JSON.parse(definition) as object,
  changedAt: instantOf(changedAt),
});

/** The last changed first. */
export async function readIntervalDrafts(ctx: Context): Promise<IntervalDraftRow[]> {
  const rows = await ctx.store.db
    .select()
    .from(intervalDrafts)
    .orderBy(desc(intervalDrafts.changedAt));
  return rows.map(draftRow);
}

/** Keeps an interval that is not in force yet, over the revision that was read; null for a new one. */
export async function saveIntervalDraft(
  ctx: Context,
  by: Session,
  id: string,
  given: SaveIntervalDraft,
): Promise<IntervalDraftRow> {
  const saved: Stored = {
    id,
    revision: (given.revision ?? 0) + 1,
    definition: JSON.stringify(given.definition),
    changedAt: ctx.clock(),
    changedBy: by.person,
  };
  const stale = await ctx.store.write(async (tx) => {
    const [there] = await tx.select().from(intervalDrafts).where(eq(intervalDrafts.id, id));
    if ((there?.revision ?? null) !== given.revision) return there ?? "gone";
    if (there === undefined) await tx.insert(intervalDrafts).values(saved);
    else await tx.update(intervalDrafts).set(saved).where(eq(intervalDrafts.id, id));
    return undefined;
  });
  if (stale === "gone") throw new Refusal("not-found", "no-such-draft");
  if (stale !== undefined)
    throw new Refusal("conflict", "interval-draft-changed-meanwhile", [], {
      current: draftRow(stale),
    });
  return draftRow(saved);
}

export async function discardIntervalDraft(ctx: Context, id: string): Promise<void> {
  await ctx.store.write((tx) => tx.delete(intervalDrafts).where(eq(intervalDrafts.id, id)));
}
