import { createHash } from "node:crypto";
import {
  type Checklist,
  canonicalize,
  type IssueDraft,
  issueDocument,
  LINT_CODES,
  type Problem,
  problem,
  reusedPoints,
} from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { findProblems } from "./find-problems.ts";
import { blocksMoved, knownBlocks } from "./known-blocks.ts";
import { readIssues } from "./read-checklists.ts";
import { readDraft } from "./read-drafts.ts";
import { Refusal } from "./refusal.ts";
import { closeDraft } from "./save-draft.ts";

export interface Issued {
  readonly id: string;
  readonly issue: number;
  readonly hash: string;
}

/** Warnings do not stand in the way; what is not a lint code is a fault of form. */
const stands = (found: Problem): boolean => LINT_CODES[found.code]?.level !== "warning";

async function fitToIssue(ctx: Context, document: unknown): Promise<Checklist> {
  const { checklist, problems } = findProblems(document, await knownBlocks(ctx, document));
  const errors = problems.filter(stands);
  if (!checklist || errors.length > 0)
    throw new Refusal("invalid", "checklist-not-right", errors.length > 0 ? errors : problems);
  return issueDocument(checklist);
}

/**
 * Issues a document as the next issue of a checklist: immutable from now on, known by the SHA-256
 * of its canonical form. Blocks are taken in as they are now: what becomes of them later changes no
 * issue. The same content as the newest issue is refused.
 */
export async function issueChecklist(
  ctx: Context,
  by: Session,
  given: { checklist: string; document: unknown; reason?: string },
): Promise<Issued> {
  const document = await fitToIssue(ctx, given.document);
  const hash = createHash("sha256").update(canonicalize(document)).digest("hex");
  const issues = await readIssues(ctx, given.checklist);
  const reused = reusedPoints(issues, document);
  if (reused.length > 0) throw new Refusal("invalid", "checklist-not-right", reused);
  const [newest] = issues;
  if (newest && newest.hash === hash && newest.status === "issued")
    throw new Refusal("conflict", "same-as-newest-issue", [
      problem("", "same-as-newest-issue", { issue: newest.issue }),
    ]);
  const ref = { id: given.checklist, issue: (newest?.issue ?? 0) + 1, hash };
  await appendNow(ctx, by, {
    kind: "checklist-issued",
    asset: null,
    body: {
      checklist: ref,
      document: document as Record<string, unknown>,
      ...(given.reason === undefined ? {} : { reason: given.reason }),
    },
  });
  return ref;
}

/** Issues the draft at the revision its designer saw, and closes it. */
export async function issueDraft(
  ctx: Context,
  by: Session,
  checklist: string,
  given: IssueDraft,
): Promise<Issued> {
  const draft = await readDraft(ctx, checklist);
  if (!draft) throw new Refusal("not-found", "no-such-draft");
  if (draft.revision !== given.revision)
    throw new Refusal("conflict", "draft-changed-meanwhile", [], { current: draft });
  const { document } = draft;
  // What is signed is what was looked at, the points of its blocks included.
  if (await blocksMoved(ctx, document, given.blocks ?? {}))
    throw new Refusal("conflict", "block-changed-meanwhile");
  const issued = await issueChecklist(ctx, by, { checklist, document, reason: given.reason });
  await closeDraft(ctx, checklist, draft.revision);
  return issued;
}
