import { parseCivilDate, weekday } from "@roundbook/schemas";
import { and, asc, eq, isNotNull, lte } from "drizzle-orm";
import type { Transport } from "../mail/transport.ts";
import { digests, mails } from "../store/schema/mails.ts";
import { civilAt, estateZone, offsetMinutes } from "./civil-now.ts";
import type { Context } from "./context.ts";
import { digestText } from "./digest-text.ts";
import { readPerson } from "./read-register.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** Six in the morning at the estate. */
const FROM_MINUTE = 6 * 60;
/** A mail that could not be sent by then says nothing new any more. */
const GIVEN_UP_AFTER_MS = 72 * HOUR_MS;
const AT_ONCE = 50;

/** Pauses that grow: a minute, four, sixteen, about an hour, then every four hours. */
const pauseMs = (attempts: number): number =>
  Math.min(4 ** Math.min(attempts, 8) * MINUTE_MS, 4 * HOUR_MS);

/**
 * Writes down the digests that are due and not written yet, one a person and day: what is decided
 * is kept before anything is sent. A server that was off at six does it when it is on again.
 */
export async function writeDigests(ctx: Context, origin?: string): Promise<number> {
  const zone = await estateZone(ctx);
  const now = ctx.clock();
  const today = parseCivilDate(civilAt(zone, now));
  if (today === undefined) return 0;
  const minute = Math.floor((now + offsetMinutes(zone, now) * MINUTE_MS) / MINUTE_MS) % (24 * 60);
  if (minute < FROM_MINUTE) return 0;
  const { db } = ctx.store;
  let count = 0;
  for (const { person, address, weekdays } of await db.select().from(digests)) {
    if (!weekdays.includes(weekday(today))) continue;
    const there = await db
      .select({ id: mails.id })
      .from(mails)
      .where(and(eq(mails.person, person), eq(mails.day, today)));
    if (there.length > 0) continue;
    const found = await readPerson(ctx, person);
    if (found === null) continue;
    const told = await digestText(ctx, { person, role: found.role }, origin).catch(
      (error: unknown) => {
        // One that cannot be made keeps nobody else's back.
        ctx.report(error);
        return undefined;
      },
    );
    if (told === undefined) continue;
    const row = { id: ctx.newId(), person, day: today, address, ...told };
    await ctx.store.write((tx) =>
      tx
        .insert(mails)
        .values({ ...row, madeAt: now, attempts: 0, nextAt: now })
        .onConflictDoNothing(),
    );
    count += 1;
  }
  return count;
}

/** Sends what waits; what cannot be sent now is kept and tried again. Gives how many were sent. */
export async function sendMails(ctx: Context, transport: Transport): Promise<number> {
  const now = ctx.clock();
  const waiting = await ctx.store.db
    .select()
    .from(mails)
    .where(and(isNotNull(mails.nextAt), lte(mails.nextAt, now)))
    .orderBy(asc(mails.madeAt), asc(mails.id))
    .limit(AT_ONCE);
  let sent = 0;
  for (const mail of waiting) {
    const { id, address: to, subject, text } = mail;
    const outcome = await transport.send({ id, to, subject, text });
    const attempts = mail.attempts + 1;
    const giveUp = outcome.is === "refused" || ctx.clock() - mail.madeAt > GIVEN_UP_AFTER_MS;
    const after =
      outcome.is === "sent"
        ? { attempts, nextAt: null, sentAt: ctx.clock(), lastError: null }
        : {
            attempts,
            nextAt: giveUp ? null : ctx.clock() + pauseMs(attempts - 1),
            lastError: outcome.error,
          };
    await ctx.store.write((tx) => tx.update(mails).set(after).where(eq(mails.id, id)));
    if (outcome.is === "sent") sent += 1;
  }
  return sent;
}

const LOOK_EVERY_MS = MINUTE_MS;

/** Looks every minute whether a digest is due or waits, until it is stopped. */
export function mailInBackground(
  ctx: Context,
  transport: Transport,
  origin?: string,
): { stop(): Promise<void> } {
  let working: Promise<unknown> = Promise.resolve();
  let busy = false;
  const look = () => {
    if (busy) return;
    busy = true;
    working = writeDigests(ctx, origin)
      .then(() => sendMails(ctx, transport))
      .catch((error: unknown) => ctx.report(error))
      .finally(() => {
        busy = false;
      });
  };
  const timer = setInterval(look, LOOK_EVERY_MS);
  timer.unref();
  look();
  return {
    async stop() {
      clearInterval(timer);
      await working;
      transport.close();
    },
  };
}
