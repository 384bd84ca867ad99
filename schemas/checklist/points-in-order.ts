import type { Checklist, RepeatDefinition } from "./meta-schema.ts";

export interface OrderedGroup {
  /** Null for the points that stand in no group; they come first. */
  readonly group: {
    readonly id: string;
    readonly title: string;
    readonly groupAnswer: boolean;
    /** Its points are asked once per member; null for a group that is asked once. */
    readonly repeat: RepeatDefinition | null;
  } | null;
  readonly points: readonly string[];
}

/**
 * The order in which points are asked: ungrouped ones first, in the document's order, then group by
 * group. Every point comes once, even when a faulty document names it twice or not at all.
 */
export const pointsInOrder = (doc: Checklist): readonly OrderedGroup[] => {
  const left = new Set(Object.keys(doc.properties));
  const groups = (doc.groups ?? []).map(
    ({ id, title, groupAnswer = false, repeat = null, points }) => ({
      group: { id, title, groupAnswer, repeat },
      points: points.filter((point) => left.delete(point)),
    }),
  );
  return left.size > 0 ? [{ group: null, points: [...left] }, ...groups] : groups;
};
