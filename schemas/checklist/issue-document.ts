import { ANSWER_DEFS } from "./answer-types.ts";
import { pointKind } from "./guards.ts";
import type { Checklist } from "./meta-schema.ts";
import { numberParticulars } from "./particulars-in-order.ts";
import { pointsInOrder } from "./points-in-order.ts";

type Group = NonNullable<Checklist["groups"]>[number];

/** Loose points as a first group: the members of a JSON object keep no order, a list does. */
const withEveryPointGrouped = (doc: Checklist): readonly Group[] => {
  const loose = pointsInOrder(doc).find(({ group }) => group === null);
  const groups = doc.groups ?? [];
  if (!loose) return groups;
  const taken = new Set(groups.map(({ id }) => id));
  let id = "points";
  for (let number = 2; taken.has(id); number += 1) id = `points_${number}`;
  return [{ id, title: doc.title, points: [...loose.points] }, ...groups];
};

/**
 * The document as it is issued. Exactly the answer types its points use stand under `$defs`, so
 * that it validates answers by itself; the order of points and particulars is written down, so that
 * it survives the canonical form. Idempotent; the canonical hash of the outcome is the checklist's
 * identity.
 */
export const issueDocument = (doc: Checklist): Checklist => {
  const kinds = new Set(Object.values(doc.properties).map(pointKind));
  const names = [...kinds, "absent", "writtenText"] as const;
  const $defs = Object.fromEntries(names.map((name) => [name, ANSWER_DEFS[name]]));
  return {
    ...doc,
    groups: [...withEveryPointGrouped(doc)],
    ...(doc.particulars ? { particulars: numberParticulars(doc.particulars) } : {}),
    $defs,
  };
};
