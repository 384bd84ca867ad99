import {
  type Answers,
  at,
  convert,
  type EntryOf,
  isSample,
  type Problem,
  problem,
  splitAnswerName,
} from "@roundbook/schemas";
import type { Db } from "../store/db.ts";
import { withResult } from "../store/projections/with-result.ts";
import type { Context } from "./context.ts";
import { findSealed, withReceived } from "./received-results.ts";

type Result = Pick<EntryOf<"result-received">, "asset" | "body">;

/**
 * The inspection that a result belongs to, with every result so far and this one; or what is wrong
 * with the result. Pointers go into its body.
 */
export async function inspectionOf(
  ctx: Context,
  db: Db,
  { asset, body }: Result,
): Promise<
  | { readonly ok: true; readonly inspection: EntryOf<"inspection"> }
  | { readonly ok: false; readonly unknown: boolean; readonly problems: readonly Problem[] }
> {
  const wrong = (found: Problem, unknown = false) =>
    ({ ok: false, unknown, problems: [found] }) as const;
  const found = await findSealed(db, body.of);
  if (found === null) return wrong(problem("/of", "unknown-entry"), true);
  const { entry } = found;
  if (entry.kind !== "inspection")
    return wrong(problem("/of", "not-an-inspection", { kind: entry.kind }));
  if (entry.asset !== asset) return wrong(problem("/of", "entry-of-other-asset"));
  const { point, result } = body;
  const answers = entry.body.answers as Answers;
  if (!Object.hasOwn(answers, point) || !isSample(answers[point]))
    return wrong(problem("/point", "not-a-sample", { point }));
  const ready = await ctx.checklists.get(db, entry.body.checklist.hash);
  if (ready === null) throw new Error("an issued checklist has lost its document");
  const to = ready.document.properties[splitAnswerName(point).point]?.quantity?.unit ?? "1";
  if (convert(result.value, result.unit, to) === undefined)
    return wrong(problem(at("/result", "unit"), "unit-not-convertible", { unit: result.unit, to }));
  const [inspection = entry] = await withReceived(db, [entry]);
  return { ok: true, inspection: withResult(inspection, body) };
}
