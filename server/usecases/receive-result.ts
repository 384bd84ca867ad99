import {
  parseCivilDate,
  problem,
  type ReceiveResult,
  type ReceiveResultReply,
} from "@roundbook/schemas";
import { appendNow } from "./append-now.ts";
import { inspectionOf } from "./check-result.ts";
import { commitText } from "./commit-text.ts";
import type { Context, Session } from "./context.ts";
import { judgeSealed } from "./judge-again.ts";
import { findSealed } from "./received-results.ts";
import { Refusal } from "./refusal.ts";

/** Takes in at the desk what a laboratory found in a sample: the inspection is judged again with it. */
export async function receiveResult(
  ctx: Context,
  by: Session,
  of: string,
  { note, ...given }: ReceiveResult,
): Promise<ReceiveResultReply> {
  const { db } = ctx.store;
  const sealed = await findSealed(db, of);
  if (sealed === null) throw new Refusal("not-found", "no-such-entry");
  const { asset } = sealed.entry;
  const said = note === undefined ? null : commitText(note);
  const body = { of, ...given, ...(said ? { note: said.commitment } : {}) };
  const checked = await inspectionOf(ctx, db, { asset, body });
  if (!checked.ok) throw new Refusal("invalid", "result-not-right", checked.problems);
  const { reportedOn } = given;
  if (reportedOn !== undefined && parseCivilDate(reportedOn) === undefined)
    throw new Refusal("invalid", "result-not-right", [
      problem("/reportedOn", "no-such-day", { date: reportedOn }),
    ]);
  const judgement = await judgeSealed(ctx, db, checked.inspection);
  if (judgement === null) throw new Error("an issued checklist has lost its document");
  const made = { kind: "result-received", asset, body, judgement } as const;
  const [one] = (await appendNow(ctx, by, made, said ? [said.content] : [])).sealed;
  if (one === undefined) throw new Error("a result was not sealed");
  return { id: one.id, judgement };
}
