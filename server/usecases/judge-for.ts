import type { Judge } from "@roundbook/schemas";
import type { Db } from "../store/db.ts";
import type { Context } from "./context.ts";
import { Refusal } from "./refusal.ts";

/** The judge of an issued checklist. @throws Refusal when no such hash was issued here. */
export async function judgeFor(ctx: Context, db: Db, hash: string): Promise<Judge> {
  const ready = await ctx.checklists.get(db, hash);
  if (ready === null) throw new Refusal("not-found", "unknown-checklist");
  return ready.judge;
}
