import { type Block, type Problem, resolveBlocks } from "@roundbook/schemas";
import type { DraftDocument } from "./draft-document.ts";

/** A draft as it would be issued: with the points of its blocks, each marked by its block. */
export interface Whole {
  readonly document: DraftDocument;
  /** What keeps a block out. */
  readonly problems: readonly Problem[];
}

/**
 * The draft with its blocks taken in; without them as long as they are not known (`undefined`) or
 * one cannot be taken in, which is then said.
 */
export const wholeOf = (document: DraftDocument, blocks: readonly Block[] | undefined): Whole => {
  const { include, ...own } = document;
  if (!include) return { document, problems: [] };
  if (!blocks) return { document: own, problems: [] };
  const named = new Map(blocks.map((block) => [block.name, block]));
  const resolved = resolveBlocks(document, (name) => named.get(name), [...named.keys()]);
  return resolved.ok
    ? { document: resolved.value, problems: [] }
    : { document: own, problems: resolved.problems };
};

type Group = NonNullable<DraftDocument["groups"]>[number];

const without = <T>(of: Readonly<Record<string, T>> = {}, gone: ReadonlySet<string>) =>
  Object.fromEntries(Object.entries(of).filter(([name]) => !gone.has(name)));

/** The document with one block's points given back to the block, or as it is where that fails. */
const givenBack = (document: DraftDocument, block: Block, blocks: readonly Block[]) => {
  const marked = new Set(
    Object.entries(document.properties).flatMap(([name, point]) =>
      point.block === block.name ? [name] : [],
    ),
  );
  if (marked.size === 0) return document;
  const brought = new Set([block.name, ...(block.groups ?? []).map(({ id }) => id)]);
  const left = (group: Group): Group[] => {
    if (!brought.has(group.id)) return [group];
    const points = group.points.filter((name) => !marked.has(name));
    return points.length > 0 ? [{ ...group, points }] : [];
  };
  const sharing: DraftDocument = {
    ...document,
    properties: without(document.properties, marked),
    groups: (document.groups ?? []).flatMap(left),
    include: [...(document.include ?? []), { block: block.name }],
  };
  // Definitions that the block has otherwise by now are the block's.
  const yielding: DraftDocument = {
    ...sharing,
    values: without(sharing.values, new Set(Object.keys(block.values ?? {}))),
    particulars: without(sharing.particulars, new Set(Object.keys(block.particulars ?? {}))),
  };
  const fits = (one: DraftDocument) => wholeOf(one, blocks).problems.length === 0;
  return [sharing, yielding].find(fits) ?? document;
};

/**
 * An issued document as the draft of the next: it includes again the blocks that its points came
 * from, so that they are as the blocks are now. Sayings of other languages go by place: a document
 * that has some, like one whose block is kept no longer, goes on with the points it was issued with.
 */
export const withIncludes = (document: DraftDocument, blocks: readonly Block[]): DraftDocument =>
  document.wording === undefined
    ? blocks.reduce((doc, block) => givenBack(doc, block, blocks), document)
    : document;
