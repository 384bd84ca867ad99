import type { Checklist } from "./meta-schema.ts";

/** What trends, defects and "same as last time" know a point by, whichever issue asked it. */
export type PointIdentity =
  | { readonly block: string; readonly point: string }
  | { readonly checklist: string; readonly point: string };

/**
 * A point of a block is the same in every checklist that includes it; any other point belongs to
 * its checklist. `point` is the point's name, without a member.
 * @throws RangeError for a point that the document does not have.
 */
export const pointIdentity = (
  checklist: string,
  doc: Pick<Checklist, "properties">,
  point: string,
): PointIdentity => {
  const definition = Object.hasOwn(doc.properties, point) ? doc.properties[point] : undefined;
  if (!definition) throw new RangeError(`no point ${point} in this checklist`);
  const { block } = definition;
  return block === undefined ? { checklist, point } : { block, point };
};
