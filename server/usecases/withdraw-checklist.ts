import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { readNewestIssue } from "./read-checklists.ts";
import { Refusal } from "./refusal.ts";

/** Withdraws the newest issue: past inspections keep it, new rounds do not offer it. */
export async function withdrawChecklist(
  ctx: Context,
  by: Session,
  checklist: string,
  reason: string,
): Promise<void> {
  const newest = await readNewestIssue(ctx, checklist);
  if (!newest) throw new Refusal("not-found", "no-such-checklist");
  if (newest.status === "withdrawn") throw new Refusal("conflict", "already-withdrawn");
  const { id, issue, hash } = newest;
  await appendNow(ctx, by, {
    kind: "checklist-withdrawn",
    asset: null,
    body: { checklist: { id, issue, hash }, reason },
  });
}
