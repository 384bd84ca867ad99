import { createHash, randomBytes } from "node:crypto";
import type { SignIn } from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { accounts, sessions } from "../store/schema/estate.ts";
import type { Context } from "./context.ts";
import { passwordMatches } from "./passwords.ts";
import { Refusal } from "./refusal.ts";

export const SESSION_MS = 30 * 86_400_000;

/** Only the hash is stored: who reads the database cannot sign in with it. */
export const hashToken = (token: string): string =>
  createHash("sha256").update(token).digest("hex");

/** Opens a session for a person who has proved who they are; gives the cookie's value. */
export async function openSession(ctx: Context, person: string): Promise<string> {
  const token = randomBytes(32).toString("base64url");
  const createdAt = ctx.clock();
  await ctx.store.write((tx) =>
    tx.insert(sessions).values({
      tokenHash: hashToken(token),
      person,
      createdAt,
      expiresAt: createdAt + SESSION_MS,
    }),
  );
  return token;
}

/** Gives the cookie's value of a new session, or refuses without telling which half was wrong. */
export async function signIn(ctx: Context, { signIn, password }: SignIn): Promise<string> {
  const [account] = await ctx.store.db.select().from(accounts).where(eq(accounts.signIn, signIn));
  if (!(await passwordMatches(account?.passwordHash, password)) || !account)
    throw new Refusal("signed-out", "wrong-sign-in");
  return openSession(ctx, account.person);
}
