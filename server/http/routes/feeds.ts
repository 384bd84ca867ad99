import { createHash } from "node:crypto";
import { feedCalendar } from "../../usecases/feed-calendar.ts";
import { findFeed, makeFeed, readFeeds, revokeFeed } from "../../usecases/feeds.ts";
import { Refusal } from "../../usecases/refusal.ts";
import { found } from "../found.ts";
import type { Handlers } from "../handler.ts";
import { remoteAddress } from "../remote-address.ts";

const FILE = /^([A-Za-z0-9_-]{43})\.ics$/;
/** When it was made is no change of what it says. */
const STAMP = /^DTSTAMP:.*\r\n/gm;

export const feedRoutes: Handlers<
  "GET /api/feeds" | "POST /api/feeds" | "DELETE /api/feeds/:id" | "GET /feeds/:file"
> = {
  "GET /api/feeds": async ({ ctx }) => ({ rows: await readFeeds(ctx) }),
  "POST /api/feeds": ({ ctx, session, body }) => makeFeed(ctx, session, body),
  "DELETE /api/feeds/:id": ({ ctx, param }) => revokeFeed(ctx, param("id")),

  "GET /feeds/:file": async ({ c, ctx, param }) => {
    const retryAfter = ctx.limits.feed.take(remoteAddress(c));
    if (retryAfter > 0) throw new Refusal("too-many", "too-many-requests", [], { retryAfter });
    const token = FILE.exec(param("file"))?.[1] ?? "";
    const text = await feedCalendar(ctx, found(await findFeed(ctx, token), "no-such-feed"));
    const hash = createHash("sha256").update(text.replaceAll(STAMP, "")).digest("base64url");
    const headers = { etag: `"${hash}"`, "cache-control": "private, no-cache" };
    if (c.req.header("if-none-match") === headers.etag)
      return new Response(null, { status: 304, headers });
    return new Response(text, {
      headers: { ...headers, "content-type": "text/calendar; charset=utf-8" },
    });
  },
};
