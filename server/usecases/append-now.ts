import type { Content } from "@roundbook/schemas";
import { type Appended, appendEntries, type Made } from "./append-entries.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import type { Context, Session } from "./context.ts";
import { instantOf } from "./instant-of.ts";

type Said = {
  [K in Made["kind"]]: Pick<Extract<Made, { kind: K }>, "kind" | "asset" | "body" | "judgement">;
}[Made["kind"]];

/** A verb of the desk as an entry: said by the signed-in person, now, at the estate. */
async function madeNow(ctx: Context, by: Session, said: Said): Promise<Made> {
  return {
    ...said,
    author: by.person,
    civilDate: civilNow(ctx, await estateZone(ctx)),
    happenedAt: instantOf(ctx.clock()),
  } as Made;
}

export async function appendNow(
  ctx: Context,
  by: Session,
  said: Said,
  contents: readonly Content[] = [],
): Promise<Appended> {
  return appendEntries(ctx, { entries: [await madeNow(ctx, by, said)], contents });
}
