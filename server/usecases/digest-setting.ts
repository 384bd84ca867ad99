import {
  type CivilDate,
  type DigestBody,
  type DigestRow,
  formatCivilDate,
  problem,
} from "@roundbook/schemas";
import { desc, eq } from "drizzle-orm";
import { digests, mails } from "../store/schema/mails.ts";
import type { Context, Session } from "./context.ts";
import { instantOf } from "./instant-of.ts";
import { Refusal } from "./refusal.ts";

/** One address, without spaces, lists or lines of its own: nothing that could be a header. */
const ADDRESS = /^[^\s@<>(),;:"\\[\]]{1,64}@[A-Za-z0-9]([A-Za-z0-9.-]{0,250}[A-Za-z0-9])?$/;

export async function readDigest(
  ctx: Context,
  { person }: Session,
  canSend: boolean,
): Promise<DigestRow> {
  const { db } = ctx.store;
  const [setting] = await db.select().from(digests).where(eq(digests.person, person));
  const [last] = await db
    .select()
    .from(mails)
    .where(eq(mails.person, person))
    .orderBy(desc(mails.day))
    .limit(1);
  return {
    address: setting?.address ?? null,
    weekdays: setting?.weekdays ?? [],
    canSend,
    last:
      last === undefined
        ? null
        : {
            day: formatCivilDate(last.day as CivilDate),
            sentAt: last.sentAt === null ? null : instantOf(last.sentAt),
            waits: last.nextAt !== null,
            error: last.lastError,
          },
  };
}

/** Says where the signed-in person gets the digest; null takes the address away. */
export async function setDigest(
  ctx: Context,
  { person }: Session,
  { address, weekdays }: DigestBody,
): Promise<void> {
  if (address !== null && !ADDRESS.test(address))
    throw new Refusal("invalid", "body-not-right", [problem("/address", "not-an-address")]);
  await ctx.store.write(async (tx) => {
    await tx.delete(digests).where(eq(digests.person, person));
    if (address !== null) await tx.insert(digests).values({ person, address, weekdays });
  });
}
