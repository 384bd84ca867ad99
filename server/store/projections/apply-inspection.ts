import {
  type Answers,
  countsAsDone,
  type EntryOf,
  isReading,
  isSample,
  type Judgement,
  type LastResult,
  type SealedLeaf,
} from "@roundbook/schemas";
import { applySource } from "./apply-asset.ts";
import { applyVerdicts } from "./apply-verdicts.ts";
import { type Batch, lastKey } from "./batch.ts";
import type { Inspected } from "./inspected.ts";
import { whenDone } from "./when-done.ts";

function readingsOf(answers: object): LastResult["readings"] {
  const readings: Record<string, LastResult["readings"][string]> = {};
  for (const [point, answer] of Object.entries(answers as Answers))
    if (isReading(answer)) readings[point] = answer;
    else if (isSample(answer) && answer.result) readings[point] = answer.result;
  return readings;
}

function applyLast(batch: Batch, { entry, asset, judgement, on, at }: Inspected): void {
  const checklist = entry.body.checklist.id;
  const last = batch.lastResults.get(lastKey(asset, checklist));
  const when = at ?? -1;
  if (last !== undefined && last.entry !== entry.id) {
    const later = on - last.on || when - last.at || (entry.id > last.entry ? 1 : -1);
    if (later < 0) return;
  }
  const { overall } = judgement;
  const readings = readingsOf(entry.body.answers);
  batch.lastResults.put({ asset, checklist, entry: entry.id, on, at: when, overall, readings });
}

/** The server's own judgement is what projections read, never the device's. */
export function applyInspection(
  batch: Batch,
  entry: EntryOf<"inspection">,
  leaf: SealedLeaf,
  before: Judgement | null = null,
): void {
  const { asset, body } = entry;
  const { seq, judgement } = leaf;
  if (asset === null || judgement === null) return;
  const { on, at } = whenDone(entry, leaf);
  const inspected = { entry, seq, asset, judgement, on, at, before };
  batch.results.put({
    entry: entry.id,
    asset,
    checklist: body.checklist.id,
    hash: body.checklist.hash,
    on,
    at,
    counts: countsAsDone(judgement),
    broughtForward: false,
    next: Object.fromEntries(
      Object.entries(judgement.scores).map(([score, { next }]) => [score, next]),
    ),
    readings: readingsOf(body.answers),
    seq,
  });
  applyLast(batch, inspected);
  applyVerdicts(batch, inspected);
  applySource(batch, entry.id, asset, body.source);
  batch.dueAssets.add(asset);
}

/**
 * A result of a sample: its inspection counts as judged with it, on the day it was done. An
 * inspection that the log does not hold has nothing to be judged.
 */
export function applyResult(
  batch: Batch,
  entry: EntryOf<"result-received">,
  leaf: SealedLeaf,
): void {
  const taken = batch.takeResult(entry, leaf);
  if (taken !== undefined) applyInspection(batch, taken.is.entry, taken.is.leaf, taken.was);
}
