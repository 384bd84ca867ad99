import { estate } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";
import { Refusal } from "./refusal.ts";

export interface Estate {
  readonly id: string;
  readonly name: string;
  /** Device id of the entries that the server makes. */
  readonly serverDevice: string;
}

export async function readEstate(ctx: Context): Promise<Estate | null> {
  const [row] = await ctx.store.db.select().from(estate);
  return row ? { id: row.id, name: row.name, serverDevice: row.serverDevice } : null;
}

/** Begins the one estate of this database. @throws Refusal when there is one. */
export function createEstate(
  ctx: Context,
  given: { name: string },
): Promise<{ estate: string; serverDevice: string }> {
  const [id, serverDevice] = [ctx.newId(), ctx.newId()];
  return ctx.store.write(async (tx) => {
    const [known] = await tx.select({ id: estate.id }).from(estate);
    if (known) throw new Refusal("conflict", "estate-exists");
    await tx.insert(estate).values({ one: 1, id, name: given.name, serverDevice });
    return { estate: id, serverDevice };
  });
}
