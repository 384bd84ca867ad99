import { BLOCK_DIALECT, type Block } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";
import { stepsOf, withWordingAt } from "./follow-wording.ts";
import { nameFor } from "./names.ts";

export const includedBlocks = (document: DraftDocument): readonly string[] =>
  (document.include ?? []).map(({ block }) => block);

/**
 * The draft taking in exactly these blocks, in this order. Points of a block that is left out leave
 * the draft's groups too.
 */
export const setIncluded = (
  document: DraftDocument,
  names: readonly string[],
  blocks: readonly Block[] = [],
): DraftDocument => {
  const { include: _, ...rest } = document;
  const out = new Set(includedBlocks(document).filter((name) => !names.includes(name)));
  const gone = new Set(
    blocks.flatMap(({ name, points }) => (out.has(name) ? Object.keys(points) : [])),
  );
  const stays = (name: string) => !gone.has(name) || Object.hasOwn(rest.properties, name);
  // The groups that blocks bring stand behind the draft's own, and move up.
  const own = rest.groups?.length ?? 0;
  const isLeft = ([member, name = ""]: readonly string[]) =>
    member === "groups" ? Number(name) < own : member !== "properties" || stays(name);
  const worded = withWordingAt(rest, (place) => (isLeft(stepsOf(place)) ? [place] : []));
  const left: DraftDocument =
    gone.size === 0
      ? rest
      : {
          ...worded,
          groups: (rest.groups ?? []).map((one) => ({ ...one, points: one.points.filter(stays) })),
        };
  return names.length > 0 ? { ...left, include: names.map((block) => ({ block })) } : left;
};

/** Whether a text of the document, a formula most of all, says a name. */
const says = (part: unknown, name: string): boolean =>
  new RegExp(`\\b${name}\\b`).test(JSON.stringify(part ?? null));

type Definitions<T> = Readonly<Record<string, T>>;

const only = <T>(of: Definitions<T> = {}, wanted: (name: string) => boolean): Definitions<T> =>
  Object.fromEntries(Object.entries(of).filter(([name]) => wanted(name)));

/** Values that a part counts with, by way of other values too. */
const valuesOf = ({ values = {} }: DraftDocument, part: unknown): ReadonlySet<string> => {
  const found = new Set<string>();
  const look = (within: unknown) => {
    for (const [name, value] of Object.entries(values))
      if (!found.has(name) && says(within, name)) {
        found.add(name);
        look(value);
      }
  };
  look(part);
  return found;
};

/** Sayings of other languages go by place, which moves: such a group stays where it is. */
export const canBecomeBlock = (document: DraftDocument, group: string): boolean =>
  document.wording === undefined &&
  (document.groups?.find(({ id }) => id === group)?.points ?? []).some((name) =>
    Object.hasOwn(document.properties, name),
  );

/**
 * A group as a block of its own, with the particulars and values its points count with, and the
 * draft that takes it in instead. The draft keeps the group, so that its points are asked in their
 * order. Definitions are copied: the draft and the block share them.
 */
export const groupAsBlock = (
  document: DraftDocument,
  id: string,
  taken: ReadonlySet<string>,
): { readonly block: Block; readonly document: DraftDocument } | null => {
  const group = document.groups?.find((one) => one.id === id);
  if (!group || !canBecomeBlock(document, id)) return null;
  const names = group.points.filter((point) => Object.hasOwn(document.properties, point));
  const points = only(document.properties, (point) => names.includes(point));
  // A group of the block's is none of the draft's: what the block gains later finds a place.
  const groups = (document.groups ?? []).map((one) => one.id);
  const name = nameFor(group.title, new Set([...taken, ...groups]), "block");
  const own = { ...group, id: name, points: names };
  const counted = valuesOf(document, [points, own]);
  const values = only(document.values, (value) => counted.has(value));
  const particulars = only(document.particulars, (one) => says([points, own, values], one));
  const block: Block = {
    dialect: BLOCK_DIALECT,
    name,
    title: group.title,
    points: { ...points },
    ...(Object.keys(particulars).length > 0 ? { particulars: { ...particulars } } : {}),
    ...(Object.keys(values).length > 0 ? { values: { ...values } } : {}),
    groups: [own],
  };
  const rest: DraftDocument = {
    ...document,
    properties: only(document.properties, (point) => !names.includes(point)),
  };
  return { block, document: setIncluded(rest, [...includedBlocks(document), block.name]) };
};
