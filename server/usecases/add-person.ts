import { type AddPerson, problem } from "@roundbook/schemas";
import { eq } from "drizzle-orm";
import { accounts } from "../store/schema/estate.ts";
import { appendWithin } from "./append-entries.ts";
import { civilNow, estateZone } from "./civil-now.ts";
import { commitText } from "./commit-text.ts";
import type { Context, Session } from "./context.ts";
import { instantOf } from "./instant-of.ts";
import { hashPassword } from "./passwords.ts";
import { Refusal } from "./refusal.ts";

/**
 * Adds a person with a sign-in of their own, as one step. Only an owner makes another owner.
 * `by` is null for the first owner, who adds themselves.
 */
export async function addPerson(
  ctx: Context,
  by: Session | null,
  given: AddPerson,
): Promise<{ id: string }> {
  if (given.role === "owner" && by !== null && by.role !== "owner")
    throw new Refusal("forbidden", "only-owners-add-owners", [
      problem("/role", "only-owners-add-owners"),
    ]);
  const id = ctx.newId();
  const passwordHash = await hashPassword(given.password);
  const { commitment, content } = commitText(given.name);
  const changedAt = ctx.clock();
  const civilDate = civilNow(ctx, await estateZone(ctx));
  await ctx.store.write(async (tx) => {
    const taken = await tx
      .select({ signIn: accounts.signIn })
      .from(accounts)
      .where(eq(accounts.signIn, given.signIn));
    if (taken.length > 0)
      throw new Refusal("conflict", "sign-in-taken", [problem("/signIn", "sign-in-taken")]);
    await appendWithin(ctx, tx, {
      entries: [
        {
          kind: "person-added",
          asset: null,
          author: by?.person ?? id,
          civilDate,
          happenedAt: instantOf(changedAt),
          body: { person: id, role: given.role, name: commitment },
        },
      ],
      contents: [content],
    });
    await tx.insert(accounts).values({ signIn: given.signIn, passwordHash, person: id, changedAt });
  });
  return { id };
}
