import type { RepeatDefinition } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";
import { nameFor } from "./names.ts";

export type RepeatHow = "once" | "numbered" | "named";

export const repeatHow = (repeat: RepeatDefinition | undefined): RepeatHow => {
  if (!repeat) return "once";
  return repeat.members ? "named" : "numbered";
};

type Member = NonNullable<RepeatDefinition["members"]>[number];
const LONGEST_ID = 32;

/** Members keep their id while their title stands: what was found at one stays with it. */
export const membersFrom = (
  titles: readonly string[],
  before: readonly Member[] = [],
): Member[] => {
  const taken = new Set(before.map(({ id }) => id));
  return titles.map((title) => {
    const kept = before.find((one) => one.title === title);
    if (kept) return kept;
    const id = nameFor(title.slice(0, LONGEST_ID - 4), taken, "member").slice(0, LONGEST_ID);
    taken.add(id);
    return { id, title };
  });
};

/** How a repeat begins; what one member is called stays when only its counting changes. */
export const repeatOf = (
  how: Exclude<RepeatHow, "once">,
  before: RepeatDefinition | undefined,
  first: { readonly each: string; readonly members: readonly string[] },
): RepeatDefinition => {
  const each = before?.each ?? first.each;
  return how === "named" ? { each, members: membersFrom(first.members) } : { each, count: 2 };
};

/**
 * Lets the points of a group be asked once for each member, or once in all. A repeat is never
 * answered as a group: one word for every member would be too easily given.
 */
export const setRepeat = (
  document: DraftDocument,
  id: string,
  repeat: RepeatDefinition | undefined,
): DraftDocument => ({
  ...document,
  groups: (document.groups ?? []).map((group) => {
    if (group.id !== id) return group;
    const { repeat: _, groupAnswer, ...rest } = group;
    if (repeat) return { ...rest, repeat };
    return groupAnswer === undefined ? rest : { ...rest, groupAnswer };
  }),
});
