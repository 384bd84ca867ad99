import { createHash, randomBytes } from "node:crypto";
import type { FeedMade, FeedRow, NewFeed } from "@roundbook/schemas";
import { problem } from "@roundbook/schemas";
import { and, desc, eq, isNull } from "drizzle-orm";
import { feeds } from "../store/schema/estate.ts";
import type { Context, Session } from "./context.ts";
import { instantOf } from "./instant-of.ts";
import { readPerson, readPlaces } from "./read-register.ts";
import { Refusal } from "./refusal.ts";

/** Nobody guesses 256 bits. */
const SECRET_BYTES = 32;
const hashOf = (token: string): string => createHash("sha256").update(token).digest("hex");

const scopeOf = ({
  kind,
  subject,
}: Pick<typeof feeds.$inferSelect, "kind" | "subject">): NewFeed =>
  kind === "site" ? { site: subject } : { person: subject };

/** Makes a secret address; it is told this once, and only its hash is kept. */
export async function makeFeed(ctx: Context, by: Session, scope: NewFeed): Promise<FeedMade> {
  const site = "site" in scope ? scope.site : undefined;
  const person = "person" in scope ? scope.person : undefined;
  if (site !== undefined && (await readPlaces(ctx)).find(({ id }) => id === site)?.level !== "site")
    throw new Refusal("invalid", "body-not-right", [problem("/site", "unknown-place")]);
  if (person !== undefined && (await readPerson(ctx, person)) === null)
    throw new Refusal("invalid", "body-not-right", [problem("/person", "unknown-person")]);
  const token = randomBytes(SECRET_BYTES).toString("base64url");
  const id = ctx.newId();
  await ctx.store.write((tx) =>
    tx.insert(feeds).values({
      id,
      tokenHash: hashOf(token),
      kind: site === undefined ? "person" : "site",
      subject: site ?? person ?? "",
      createdAt: ctx.clock(),
      createdBy: by.person,
    }),
  );
  return { id, path: `/feeds/${token}.ics` };
}

/** The newest first, revoked ones too. */
export async function readFeeds(ctx: Context): Promise<FeedRow[]> {
  const rows = await ctx.store.db
    .select()
    .from(feeds)
    .orderBy(desc(feeds.createdAt), desc(feeds.id));
  return rows.map((row) => ({
    id: row.id,
    scope: scopeOf(row),
    createdAt: instantOf(row.createdAt),
    revokedAt: row.revokedAt === null ? null : instantOf(row.revokedAt),
  }));
}

/** From now on the address leads nowhere; calendars that show it stop being brought up to date. */
export async function revokeFeed(ctx: Context, id: string): Promise<void> {
  const [row] = await ctx.store.db.select().from(feeds).where(eq(feeds.id, id));
  if (row === undefined) throw new Refusal("not-found", "no-such-feed");
  if (row.revokedAt !== null) return;
  const revokedAt = ctx.clock();
  await ctx.store.write((tx) => tx.update(feeds).set({ revokedAt }).where(eq(feeds.id, id)));
}

/** What a secret stands for; null for a wrong one and a revoked one alike. */
export async function findFeed(ctx: Context, token: string): Promise<NewFeed | null> {
  const [row] = await ctx.store.db
    .select()
    .from(feeds)
    .where(and(eq(feeds.tokenHash, hashOf(token)), isNull(feeds.revokedAt)));
  return row === undefined ? null : scopeOf(row);
}
