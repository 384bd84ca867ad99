import type { DraftRow, NewDraft, SaveDraft } from "@roundbook/schemas";
import { and, eq } from "drizzle-orm";
import { drafts } from "../store/schema/estate.ts";
import type { Context, Session } from "./context.ts";
import { draftRow, readDraft } from "./read-drafts.ts";
import { Refusal } from "./refusal.ts";

const missing = () => new Refusal("not-found", "no-such-draft");

/** Begins a draft; there is one draft of a checklist at a time. */
export async function beginDraft(ctx: Context, by: Session, given: NewDraft): Promise<DraftRow> {
  const row = {
    checklist: given.checklist ?? ctx.newId(),
    revision: 1,
    document: JSON.stringify(given.document),
    changedAt: ctx.clock(),
    changedBy: by.person,
  };
  const taken = await ctx.store.write(async (tx) => {
    const there = await tx.select().from(drafts).where(eq(drafts.checklist, row.checklist));
    if (there.length === 0) await tx.insert(drafts).values(row);
    return there[0];
  });
  if (taken)
    throw new Refusal("conflict", "draft-exists", [], { current: await draftRow(ctx, taken) });
  return draftRow(ctx, row);
}

/** Saves over the revision that was read; another revision meanwhile is refused with it. */
export async function saveDraft(
  ctx: Context,
  by: Session,
  checklist: string,
  given: SaveDraft,
): Promise<DraftRow> {
  const saved = {
    revision: given.revision + 1,
    document: JSON.stringify(given.document),
    changedAt: ctx.clock(),
    changedBy: by.person,
  };
  const stale = await ctx.store.write(async (tx) => {
    const [there] = await tx.select().from(drafts).where(eq(drafts.checklist, checklist));
    if (!there) throw missing();
    if (there.revision !== given.revision) return there;
    await tx.update(drafts).set(saved).where(eq(drafts.checklist, checklist));
    return undefined;
  });
  if (stale)
    throw new Refusal("conflict", "draft-changed-meanwhile", [], {
      current: await draftRow(ctx, stale),
    });
  return draftRow(ctx, { checklist, ...saved });
}

export async function discardDraft(ctx: Context, checklist: string): Promise<void> {
  if (!(await readDraft(ctx, checklist))) throw missing();
  await ctx.store.write((tx) => tx.delete(drafts).where(eq(drafts.checklist, checklist)));
}

/** Removes a draft that has just been issued, unless it was changed meanwhile. */
export async function closeDraft(ctx: Context, checklist: string, revision: number): Promise<void> {
  await ctx.store.write((tx) =>
    tx.delete(drafts).where(and(eq(drafts.checklist, checklist), eq(drafts.revision, revision))),
  );
}
