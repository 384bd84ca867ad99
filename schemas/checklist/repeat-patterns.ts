import type { RepeatDefinition } from "./meta-schema.ts";
import { MOST_MEMBERS } from "./repeats.ts";

/** The numbers from 1 to `most` (99 at most) as a regular expression. */
const numbers = (most: number): string => {
  const [tens, ones] = [Math.floor(most / 10), most % 10];
  if (tens === 0) return `[1-${ones}]`;
  const upTo = [`[1-9]`, ...(tens > 1 ? [`[1-${tens - 1}][0-9]`] : []), `${tens}[0-${ones}]`];
  return most === 99 ? "[1-9][0-9]?" : upTo.join("|");
};

/**
 * The names that answers for a point of a repeat have, as `allowsMember` tells them. Names of points
 * and members hold no character that means something in a regular expression.
 */
export const repeatPattern = (point: string, repeat: RepeatDefinition): string => {
  const { members, atMost = MOST_MEMBERS } = repeat;
  return `^${point}@(${members ? members.map(({ id }) => id).join("|") : numbers(atMost)})$`;
};
