import type { Block, BlockRow, BlockUser } from "@roundbook/schemas";
import { asc, eq } from "drizzle-orm";
import { blocks, drafts } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";
import { instantOf } from "./instant-of.ts";
import { includedNames } from "./known-blocks.ts";
import { readChecklists } from "./read-checklists.ts";

type Stored = typeof blocks.$inferSelect;
type Users = ReadonlyMap<string, readonly BlockUser[]>;

/** By block: the drafts that include it, then the newest issues that hold points of it. */
export async function readUsers(ctx: Context): Promise<Users> {
  const users = new Map<string, BlockUser[]>();
  const add = (names: Iterable<string>, user: BlockUser) => {
    for (const name of new Set(names)) users.set(name, [...(users.get(name) ?? []), user]);
  };
  for (const { checklist, document: text } of await ctx.store.db.select().from(drafts)) {
    const document = JSON.parse(text) as { title?: unknown };
    const title = typeof document.title === "string" ? document.title : "";
    add(includedNames(document), { checklist, title, issue: null });
  }
  for (const { id, issue, title, status, document } of await readChecklists(ctx)) {
    if (status === "withdrawn") continue;
    const names = Object.values(document.properties).flatMap(({ block }) => block ?? []);
    add(names, { checklist: id, title, issue });
  }
  return users;
}

export const blockRow = (stored: Stored, users: Users): BlockRow => ({
  name: stored.name,
  revision: stored.revision,
  block: JSON.parse(stored.document) as Block,
  changedAt: instantOf(stored.changedAt),
  changedBy: stored.changedBy,
  usedBy: users.get(stored.name) ?? [],
});

/** Every block by name, with the checklists that take it in. */
export async function readBlocks(ctx: Context): Promise<BlockRow[]> {
  const rows = await ctx.store.db.select().from(blocks).orderBy(asc(blocks.name));
  const users = await readUsers(ctx);
  return rows.map((row) => blockRow(row, users));
}

export async function readBlock(ctx: Context, name: string): Promise<BlockRow | null> {
  const [row] = await ctx.store.db.select().from(blocks).where(eq(blocks.name, name));
  return row ? blockRow(row, await readUsers(ctx)) : null;
}
