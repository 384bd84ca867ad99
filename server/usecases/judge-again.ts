import {
  type Answers,
  canonicalize,
  type EntryOf,
  type Evidence,
  type Judgement,
  type Problem,
} from "@roundbook/schemas";
import type { Db } from "../store/db.ts";
import type { Context } from "./context.ts";

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

/**
 * Judges an inspection by the issued document itself. The device's own judgement stays in the
 * entry, whatever it says. Null when the document is not known here.
 */
export async function judgeAgain(
  ctx: Context,
  tx: Db,
  { body }: EntryOf<"inspection">,
): Promise<JudgedAgain | null> {
  const ready = await ctx.checklists.get(tx, body.checklist.hash);
  if (ready === null) return null;
  const problems = ready
    .problemsOf(body.answers)
    .map((one) => ({ ...one, pointer: `/entry/body/answers${one.pointer}` }));
  const judgement = ready.judge.judge({
    particulars: body.particulars as Readonly<Record<string, string | number | boolean>>,
    answers: body.answers as Answers,
    evidence: body.evidence as Evidence | undefined,
  });
  return { judgement, differs: gist(judgement) !== gist(body.judgement), problems };
}
