import {
  type Answers,
  canonicalize,
  type EntryOf,
  type Evidence,
  type Judgement,
  type Particulars,
  type Problem,
} from "@roundbook/schemas";
import type { Db } from "../store/db.ts";
import type { ReadyChecklist } from "./checklist-cache.ts";
import type { Context } from "./context.ts";
import { previousAnswers } from "./previous-answers.ts";

export interface JudgedAgain {
  readonly judgement: Judgement;
  /** The device came to another result. */
  readonly differs: boolean;
  /** Ill-formed answers; pointers into the signed entry. */
  readonly problems: readonly Problem[];
}

const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null ? { ...value } : {};

/** What two judgements have to agree on: results and bounds, not how they are explained. */
function gist(judgement: unknown): string {
  const { overall, complete, points, scores } = record(judgement);
  const part = (all: unknown, keys: readonly string[]) =>
    Object.entries(record(all)).map(([name, one]) => [
      name,
      keys.map((key) => record(one)[key] ?? null),
    ]);
  return canonicalize({
    overall,
    complete,
    points: Object.fromEntries(part(points, ["verdict", "bound"])),
    scores: Object.fromEntries(part(scores, ["score", "verdict", "band", "next"])),
  });
}

/** Judges on the inspection's own day, against the inspection before it where a limit asks. */
async function judgeWith(
  { judge, usesPrevious }: ReadyChecklist,
  tx: Db,
  entry: EntryOf<"inspection">,
): Promise<Judgement> {
  const { body, civilDate } = entry;
  return judge.judge({
    particulars: body.particulars as Particulars,
    answers: body.answers as Answers,
    evidence: body.evidence as Evidence | undefined,
    on: civilDate,
    previous: usesPrevious ? await previousAnswers(tx, entry) : undefined,
  });
}

/** Judges what is sealed already, such as with a result that came since. */
export async function judgeSealed(
  ctx: Context,
  tx: Db,
  inspection: EntryOf<"inspection">,
): Promise<Judgement | null> {
  const ready = await ctx.checklists.get(tx, inspection.body.checklist.hash);
  return ready && judgeWith(ready, tx, inspection);
}

/**
 * Judges an inspection by the issued document itself. The device's own judgement stays in the
 * entry, whatever it says. Null when the document is not known here.
 */
export async function judgeAgain(
  ctx: Context,
  tx: Db,
  entry: EntryOf<"inspection">,
): Promise<JudgedAgain | null> {
  const { body } = entry;
  const ready = await ctx.checklists.get(tx, body.checklist.hash);
  if (ready === null) return null;
  const problems = ready
    .problemsOf(body.answers)
    .map((one) => ({ ...one, pointer: `/entry/body/answers${one.pointer}` }));
  const judgement = await judgeWith(ready, tx, entry);
  return { judgement, differs: gist(judgement) !== gist(body.judgement), problems };
}
