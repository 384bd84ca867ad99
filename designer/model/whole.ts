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
