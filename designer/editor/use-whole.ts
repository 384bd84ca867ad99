import type { Block } from "@roundbook/schemas";
import { useMemo } from "react";
import type { DraftDocument } from "../model/draft-document.ts";
import { type Whole, wholeOf } from "../model/whole.ts";
import { useBlocks } from "../pages/queries.ts";

const NO_BLOCKS: readonly Block[] = [];

/** The draft with its blocks as they are kept now, and the blocks there are. */
export const useWhole = (
  document: DraftDocument,
): {
  readonly whole: Whole;
  readonly blocks: readonly Block[];
  /** Of each block, by name: what `whole` was made with. */
  readonly revisions: Readonly<Record<string, number>>;
} => {
  const rows = useBlocks().data;
  const blocks = useMemo(() => rows?.map(({ block }) => block), [rows]);
  const whole = useMemo(() => wholeOf(document, blocks), [document, blocks]);
  const revisions = Object.fromEntries((rows ?? []).map(({ name, revision }) => [name, revision]));
  return { whole, blocks: blocks ?? NO_BLOCKS, revisions };
};
