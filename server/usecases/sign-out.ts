import { eq } from "drizzle-orm";
import { sessions } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";
import { hashToken } from "./sign-in.ts";

export async function signOut(ctx: Context, token: string): Promise<void> {
  await ctx.store.write((tx) =>
    tx.delete(sessions).where(eq(sessions.tokenHash, hashToken(token))),
  );
}
