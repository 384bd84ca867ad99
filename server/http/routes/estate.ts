import { addPerson } from "../../usecases/add-person.ts";
import { addPlace } from "../../usecases/add-place.ts";
import { readBundle, readChanges } from "../../usecases/read-bundle.ts";
import { readSiteHistory } from "../../usecases/read-history.ts";
import { readPeople, readPlaces } from "../../usecases/read-register.ts";
import { found } from "../found.ts";
import type { Handlers } from "../handler.ts";

export const estateRoutes: Handlers<
  | "GET /api/people"
  | "POST /api/people"
  | "GET /api/places"
  | "POST /api/places"
  | "GET /api/sites/:id/bundle"
  | "GET /api/sites/:id/changes"
  | "GET /api/sites/:id/history"
> = {
  "GET /api/people": async ({ ctx }) => ({ rows: await readPeople(ctx) }),
  "POST /api/people": ({ ctx, session, body }) => addPerson(ctx, session, body),
  "GET /api/places": async ({ ctx }) => ({ rows: await readPlaces(ctx) }),
  "POST /api/places": ({ ctx, session, body }) => addPlace(ctx, session, body),

  "GET /api/sites/:id/bundle": async ({ c, ctx, param }) => {
    const bundle = found(await readBundle(ctx, param("id")), "no-such-site");
    const etag = `"${bundle.cursor}-${bundle.stamp}-${bundle.today}"`;
    const headers = { etag, "cache-control": "private, no-cache" };
    if (c.req.header("if-none-match") === etag) return new Response(null, { status: 304, headers });
    return c.json(bundle, 200, headers);
  },
  "GET /api/sites/:id/changes": async ({ ctx, param, query }) => {
    const { cursor, stamp, today } = query;
    const since = { cursor: Number(cursor), stamp, today };
    return { changes: await readChanges(ctx, param("id"), since) };
  },
  "GET /api/sites/:id/history": ({ ctx, param, query }) =>
    readSiteHistory(ctx, param("id"), Number(query.after), query.from),
};
