import {
  addDuration,
  type CivilDate,
  type GradeDefinition,
  splitAnswerName,
} from "@roundbook/schemas";
import { answerTitle } from "./answer-title.ts";
import { type Batch, defectKey } from "./batch.ts";
import type { Inspected } from "./inspected.ts";

/** A failure whose checklist gives no grade is to be put right, by a date that nobody has set. */
const UNGRADED: GradeDefinition = { means: "by-a-date" };

function raise(batch: Batch, inspected: Inspected, point: string): void {
  const { entry, asset, on, at } = inspected;
  const { id: checklist, hash } = entry.body.checklist;
  const document = batch.checklistDocs.get(hash)?.document;
  const asked = document?.properties[splitAnswerName(point).point];
  const { means, within } = asked?.grade ?? UNGRADED;
  const id = `${entry.id}:${point}`;
  batch.defects.put({
    id,
    // Found again by a later result of the same sample it is the same defect.
    number: batch.defects.get(id)?.number ?? batch.nextNumber("defects"),
    asset,
    site: batch.assets.get(asset)?.site ?? "",
    checklist,
    point,
    title: document === undefined ? point : answerTitle(document, inspected.judgement, point),
    grade: means,
    by: within === undefined ? null : addDuration(on as CivilDate, within),
    raisedOn: on,
    raisedBy: entry.author,
    step: "raised",
    passedSince: null,
    open: true,
    seenOn: on,
    seenAt: at ?? -1,
  });
  batch.openDefects.set(defectKey(asset, checklist, point), id);
}

/**
 * A failing point raises a defect unless one is open for it; a later pass is noted and closes
 * nothing: somebody has to verify. What an inspection found before the latest one taken in changes
 * no note of a later day.
 */
export function applyVerdicts(batch: Batch, inspected: Inspected): void {
  const { entry, asset, judgement, on, before } = inspected;
  const at = inspected.at ?? -1;
  for (const point of Object.keys(judgement.points).sort()) {
    const verdict = judgement.points[point]?.verdict;
    if (before !== null && before.points[point]?.verdict === verdict) continue;
    if (verdict !== "fail" && verdict !== "pass" && verdict !== "advisory") continue;
    const open = batch.openDefects.get(defectKey(asset, entry.body.checklist.id, point));
    const defect = open === undefined ? undefined : batch.defects.get(open);
    if (defect === undefined) {
      if (verdict === "fail") raise(batch, inspected, point);
      continue;
    }
    if (on < defect.seenOn || (on === defect.seenOn && at < defect.seenAt)) continue;
    const passedSince = verdict === "fail" ? null : (defect.passedSince ?? on);
    batch.defects.put({ ...defect, passedSince, seenOn: on, seenAt: at });
  }
}
