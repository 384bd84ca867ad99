import {
  type Block,
  type BlockRow,
  type Checklist,
  DIALECT,
  JSON_SCHEMA_DRAFT,
  problem,
  resolveBlocks,
  type SaveBlock,
} from "@roundbook/schemas";
import { parseBlock } from "@roundbook/schemas/validate";
import { eq } from "drizzle-orm";
import { blocks } from "../store/schema/estate.ts";
import { atOnce } from "./at-once.ts";
import type { Context, Session } from "./context.ts";
import { blockRow, readBlock, readUsers } from "./read-blocks.ts";
import { Refusal } from "./refusal.ts";

/** A checklist with nothing of its own: what it cannot take in, none can. */
const bare = ({ name, title }: Block): Checklist => ({
  $schema: JSON_SCHEMA_DRAFT,
  dialect: DIALECT,
  title,
  type: "object",
  properties: {},
  additionalProperties: false,
  include: [{ block: name }],
});

function fitToKeep(name: string, document: unknown): Block {
  const parsed = parseBlock(document);
  if (!parsed.ok) throw new Refusal("invalid", "block-cannot-be-kept", parsed.problems);
  const block = parsed.value;
  if (block.name !== name)
    throw new Refusal("invalid", "name-differs", [
      problem("/name", "name-differs", { expected: name, found: block.name }),
    ]);
  const taken = resolveBlocks(bare(block), () => block);
  if (!taken.ok) {
    const problems = taken.problems.map((one) => ({ ...one, pointer: "" }));
    throw new Refusal("invalid", "block-cannot-be-kept", problems);
  }
  return block;
}

/**
 * Keeps a well-formed block over the revision that was read (0: there was none); another revision
 * meanwhile is refused with it. Drafts that include it see the new one, issues stay as they are.
 * Pointers of problems go into the block.
 */
export async function saveBlock(
  ctx: Context,
  by: Session,
  name: string,
  given: SaveBlock,
): Promise<BlockRow> {
  const saved = {
    name,
    revision: given.revision + 1,
    document: JSON.stringify(fitToKeep(name, given.block)),
    changedAt: ctx.clock(),
    changedBy: by.person,
  };
  return atOnce(ctx, async (within) => {
    const current = await readBlock(within, name);
    if (!current && given.revision > 0) throw new Refusal("not-found", "no-such-block");
    if (current && current.revision !== given.revision) {
      const code = given.revision === 0 ? "block-exists" : "block-changed-meanwhile";
      throw new Refusal("conflict", code, [], { current });
    }
    await within.store.db
      .insert(blocks)
      .values(saved)
      .onConflictDoUpdate({ target: blocks.name, set: saved });
    return blockRow(saved, await readUsers(within));
  });
}

/** Removes a block that no draft includes; what was issued with its points stands alone. */
export async function removeBlock(ctx: Context, name: string): Promise<void> {
  const block = await readBlock(ctx, name);
  if (!block) throw new Refusal("not-found", "no-such-block");
  const drafts = block.usedBy.filter(({ issue }) => issue === null);
  if (drafts.length > 0) throw new Refusal("conflict", "block-in-use", [], { usedBy: drafts });
  await ctx.store.write((tx) => tx.delete(blocks).where(eq(blocks.name, name)));
}
