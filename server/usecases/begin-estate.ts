import { problem, type Setup } from "@roundbook/schemas";
import { accounts } from "../store/schema/estate.ts";
import { addPerson } from "./add-person.ts";
import { addPlace, isZone } from "./add-place.ts";
import { appendNow } from "./append-now.ts";
import type { Context, Session } from "./context.ts";
import { createEstate, readEstate } from "./create-estate.ts";
import { openDemo } from "./demo/open-demo.ts";
import { Refusal } from "./refusal.ts";
import type { SetupToken } from "./setup-token.ts";

/** True until somebody can sign in. */
export async function isEmptyEstate(ctx: Context): Promise<boolean> {
  const any = await ctx.store.db.select({ signIn: accounts.signIn }).from(accounts).limit(1);
  return any.length === 0;
}

async function beginOwn(ctx: Context, setup: Setup): Promise<string> {
  const { estate, zone, name, signIn, password } = setup;
  if (estate === undefined || zone === undefined || !isZone(zone))
    throw new Refusal("invalid", "setup-not-right", [
      ...(estate === undefined ? [problem("", "missing-keyword", { keyword: "estate" })] : []),
      ...(zone === undefined ? [problem("", "missing-keyword", { keyword: "zone" })] : []),
      ...(zone !== undefined && !isZone(zone) ? [problem("/zone", "unknown-zone", { zone })] : []),
    ]);
  // A beginning that broke off left an estate that nobody can enter: it is taken up again.
  if (!(await readEstate(ctx))) await createEstate(ctx, { name: estate });
  const { id } = await addPerson(ctx, null, { name, role: "owner", signIn, password });
  const owner: Session = { person: id, role: "owner" };
  await appendNow(ctx, owner, { kind: "estate-named", asset: null, body: { name: estate } });
  // The zone belongs to a site: the first one carries the estate's name until others are added.
  await addPlace(ctx, owner, { parent: null, level: "site", code: "1", name: estate, zone });
  return id;
}

/** Makes the estate and its first owner; works once. Gives the owner's id. */
export async function beginEstate(ctx: Context, token: SetupToken, setup: Setup): Promise<string> {
  if (!token.claim(setup.token))
    throw new Refusal("forbidden", "wrong-setup-token", [problem("/token", "wrong-setup-token")]);
  try {
    if (!(await isEmptyEstate(ctx))) throw new Refusal("conflict", "estate-has-owner");
    return setup.mode === "demo" ? await openDemo(ctx, setup) : await beginOwn(ctx, setup);
  } catch (error) {
    if (await isEmptyEstate(ctx)) token.release();
    throw error;
  }
}
