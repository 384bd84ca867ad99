import type { Block } from "@roundbook/schemas";
import { blocks } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";

/** Blocks of the estate by name. */
export type KnownBlocks = ReadonlyMap<string, Block>;

export const NO_BLOCKS: KnownBlocks = new Map();

/** Names that a document of any shape includes. */
export const includedNames = (document: unknown): readonly string[] => {
  const include = (document as { include?: unknown } | null)?.include;
  if (!Array.isArray(include)) return [];
  return include.flatMap((one: { block?: unknown } | null) =>
    typeof one?.block === "string" ? [one.block] : [],
  );
};

/** Whether a document includes a block that is no longer as it was seen, by name and revision. */
export async function blocksMoved(
  ctx: Context,
  document: unknown,
  seen: Readonly<Record<string, unknown>>,
): Promise<boolean> {
  const names = new Set(includedNames(document).filter((name) => Object.hasOwn(seen, name)));
  if (names.size === 0) return false;
  const rows = await ctx.store.db.select().from(blocks);
  return rows.some(({ name, revision }) => names.has(name) && seen[name] !== revision);
}

/** The blocks a document may take in, as they are now; none is read for one that takes none. */
export async function knownBlocks(ctx: Context, document: unknown): Promise<KnownBlocks> {
  if (includedNames(document).length === 0) return NO_BLOCKS;
  const rows = await ctx.store.db.select().from(blocks);
  return new Map(rows.map(({ name, document: text }) => [name, JSON.parse(text) as Block]));
}
