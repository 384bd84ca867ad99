import { answerName } from "./answer-name.ts";
import type { Checklist } from "./meta-schema.ts";
import { type OrderedGroup, pointsInOrder } from "./points-in-order.ts";

/** Members of each repeat by the id of its group, as `Judge.members` tells them. */
export type SheetMembers = Readonly<
  Record<string, { readonly members: readonly { readonly id: string; readonly title: string }[] }>
>;

export interface SheetSection {
  /** Null for the points that stand in no group. */
  readonly group: {
    readonly id: string;
    readonly title: string;
    readonly groupAnswer: boolean;
  } | null;
  /** The member of a repeat this section is about, and what one member is called. */
  readonly member: { readonly id: string; readonly title: string; readonly each: string } | null;
  /** Answer names with the point each is of. */
  readonly points: readonly { readonly name: string; readonly point: string }[];
}

const sectionsOf = ({ group, points }: OrderedGroup, members: SheetMembers): SheetSection[] => {
  const section = (member: SheetSection["member"]): SheetSection => ({
    group: group && { id: group.id, title: group.title, groupAnswer: group.groupAnswer },
    member,
    points: points.map((point) => ({ name: answerName(point, member?.id ?? null), point })),
  });
  if (!group?.repeat) return [section(null)];
  const { each } = group.repeat;
  const found = Object.hasOwn(members, group.id) ? members[group.id]?.members : undefined;
  return (found ?? []).map(({ id, title }) => section({ id, title, each }));
};

/**
 * Sections of a sheet in the order they are asked: one per group, and one per member of a repeat.
 * A repeat whose members are not known has none; sections without points are left out.
 */
export const sheetOrder = (doc: Checklist, members: SheetMembers): readonly SheetSection[] =>
  pointsInOrder(doc)
    .filter(({ points }) => points.length > 0)
    .flatMap((group) => sectionsOf(group, members));
