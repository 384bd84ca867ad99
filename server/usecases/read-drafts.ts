import type { DraftRow } from "@roundbook/schemas";
import { desc, eq } from "drizzle-orm";
import { drafts } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";
import { findProblems } from "./find-problems.ts";
import { instantOf } from "./instant-of.ts";
import { knownBlocks } from "./known-blocks.ts";
import { readNewestIssue } from "./read-checklists.ts";

type Stored = typeof drafts.$inferSelect;

export async function draftRow(ctx: Context, stored: Stored): Promise<DraftRow> {
  const document = JSON.parse(stored.document) as Record<string, unknown>;
  const newest = await readNewestIssue(ctx, stored.checklist);
  return {
    checklist: stored.checklist,
    revision: stored.revision,
    document,
    changedAt: instantOf(stored.changedAt),
    changedBy: stored.changedBy,
    problems: findProblems(document, await knownBlocks(ctx, document)).problems,
    lastIssue: newest?.issue ?? 0,
  };
}

/** The last changed first. */
export async function readDrafts(ctx: Context): Promise<DraftRow[]> {
  const rows = await ctx.store.db.select().from(drafts).orderBy(desc(drafts.changedAt));
  return Promise.all(rows.map((row) => draftRow(ctx, row)));
}

export async function readDraft(ctx: Context, checklist: string): Promise<DraftRow | null> {
  const [row] = await ctx.store.db.select().from(drafts).where(eq(drafts.checklist, checklist));
  return row ? draftRow(ctx, row) : null;
}
