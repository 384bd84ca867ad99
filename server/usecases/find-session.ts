import { eq, lte } from "drizzle-orm";
import { sessions } from "../store/schema/estate.ts";
import type { Context, Session } from "./context.ts";
import { readPerson } from "./read-register.ts";
import { hashToken, SESSION_MS } from "./sign-in.ts";

const DAY_MS = 86_400_000;

/**
 * The session a cookie's value stands for, or null. Use keeps it alive for thirty days more,
 * written at most once a day.
 */
export async function findSession(ctx: Context, token: string): Promise<Session | null> {
  const tokenHash = hashToken(token);
  const [row] = await ctx.store.db.select().from(sessions).where(eq(sessions.tokenHash, tokenHash));
  const now = ctx.clock();
  if (!row || row.expiresAt <= now) return null;
  const person = await readPerson(ctx, row.person);
  if (!person) return null;
  if (row.expiresAt - now < SESSION_MS - DAY_MS)
    await ctx.store.write(async (tx) => {
      await tx
        .update(sessions)
        .set({ expiresAt: now + SESSION_MS })
        .where(eq(sessions.tokenHash, tokenHash));
      await tx.delete(sessions).where(lte(sessions.expiresAt, now));
    });
  return { person: person.id, role: person.role };
}
