import type { Checklist, RepeatDefinition } from "./meta-schema.ts";

/** Most members a repeat has when it does not say. */
export const MOST_MEMBERS = 99;

const NUMBERED = /^[1-9]\d?$/;

/** The group that repeats a point. */
export interface PointRepeat {
  readonly group: string;
  readonly repeat: RepeatDefinition;
}

/** The repeats of a checklist by the points they repeat; a point belongs to its first group. */
export const repeatsByPoint = (doc: Checklist): ReadonlyMap<string, PointRepeat> => {
  const repeats = new Map<string, PointRepeat>();
  const placed = new Set<string>();
  for (const { id, points, repeat } of doc.groups ?? []) {
    for (const point of points) {
      if (repeat && !placed.has(point)) repeats.set(point, { group: id, repeat });
      placed.add(point);
    }
  }
  return repeats;
};

/**
 * Whether an answer may be given for a member: one that is named, or a number up to `atMost`. How
 * many numbered members an asset really has is known only with its particulars, to the judge.
 */
export const allowsMember = (repeat: RepeatDefinition, member: string): boolean =>
  repeat.members
    ? repeat.members.some(({ id }) => id === member)
    : NUMBERED.test(member) && Number(member) <= (repeat.atMost ?? MOST_MEMBERS);

/** The members that may be answered, for a message: "left", "right", or "1–12". */
export const membersSaid = (repeat: RepeatDefinition): readonly string[] =>
  repeat.members?.map(({ id }) => id) ?? [`1–${repeat.atMost ?? MOST_MEMBERS}`];
