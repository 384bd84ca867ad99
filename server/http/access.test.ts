import { ROLES, type Role } from "@roundbook/schemas";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ROUTE_KEYS, ROUTES, type RouteKey, type RouteRule, splitKey } from "./route-table.ts";
import { addRole, beginOwn, signIn, startServer, type TestServer } from "./testing/server.ts";

const ANYONE = "anyone owner manager inspector auditor";
const ALL = "owner manager inspector auditor";
const ROUND = "owner manager inspector";
const DESK = "owner manager";

/** Written out again beside the table: a slip in one of them shows. */
const EXPECTED: Readonly<Record<RouteKey, string>> = {
  "GET /api/session": ANYONE,
  "POST /api/setup": ANYONE,
  "POST /api/session": ANYONE,
  "DELETE /api/session": ALL,
  "POST /api/devices": ROUND,
  "POST /api/number-blocks": ROUND,
  "GET /api/people": ALL,
  "POST /api/people": DESK,
  "GET /api/places": ALL,
  "POST /api/places": DESK,
  "GET /api/sites/:id/bundle": ALL,
  "GET /api/sites/:id/changes": ALL,
  "GET /api/sites/:id/history": ALL,
  "GET /api/calendars": ALL,
  "GET /api/holiday-regions": ALL,
  "PUT /api/sites/:id/calendar": DESK,
  "GET /api/teams": ALL,
  "PUT /api/teams/:id": DESK,
  "PUT /api/places/:id/keeper": DESK,
  "PUT /api/people/:id/time": DESK,
  "PUT /api/assets/:id/particulars": DESK,
  "PUT /api/assets/:id/overrides/:interval": DESK,
  "DELETE /api/assets/:id/overrides/:interval": DESK,
  "GET /api/due": ALL,
  "GET /api/due/count": ALL,
  "GET /api/plan": ALL,
  "GET /api/assets": ALL,
  "POST /api/assets": DESK,
  "GET /api/assets/:id": ALL,
  "GET /api/assets/:id/history": ALL,
  "GET /api/logbook": ALL,
  "GET /api/entries/:id": ALL,
  "POST /api/entries": ROUND,
  "POST /api/entries/:id/results": ROUND,
  "PUT /api/evidence/:sha256": ROUND,
  "GET /api/evidence/:sha256": ALL,
  "GET /api/defects": ALL,
  "GET /api/checklists": ALL,
  "GET /api/checklists/:hash": ALL,
  "POST /api/checklists/:id/withdraw": DESK,
  "GET /api/drafts": DESK,
  "POST /api/drafts": DESK,
  "GET /api/drafts/:checklist": DESK,
  "PUT /api/drafts/:checklist": DESK,
  "DELETE /api/drafts/:checklist": DESK,
  "POST /api/drafts/:checklist/issue": DESK,
  "GET /api/blocks": DESK,
  "GET /api/blocks/:name": DESK,
  "PUT /api/blocks/:name": DESK,
  "DELETE /api/blocks/:name": DESK,
  "GET /api/asset-types": ALL,
  "PUT /api/asset-types/:name": DESK,
  "GET /api/intervals": ALL,
  "POST /api/intervals": DESK,
  "PUT /api/intervals/:id": DESK,
  "DELETE /api/intervals/:id": DESK,
  "POST /api/intervals/dates": DESK,
  "POST /api/intervals/effect": DESK,
  "GET /api/interval-drafts": DESK,
  "PUT /api/interval-drafts/:id": DESK,
  "DELETE /api/interval-drafts/:id": DESK,
  "POST /api/imports": DESK,
  "POST /api/imports/:id/trial": DESK,
  "POST /api/imports/:id/run": DESK,
  "GET /api/digest": ALL,
  "PUT /api/digest": ALL,
  "GET /api/feeds": DESK,
  "POST /api/feeds": DESK,
  "DELETE /api/feeds/:id": DESK,
  "GET /feeds/:file": ANYONE,
  "GET /api/export": "owner manager auditor",
  "GET /api/openapi.json": ALL,
};

let server: TestServer;
const cookies = new Map<Role, string>();

beforeAll(async () => {
  server = await startServer();
  const owner = await beginOwn(server);
  cookies.set("owner", owner);
  for (const role of ROLES)
    if (role !== "owner") cookies.set(role, await addRole(server, owner, role));
});
afterAll(() => server.close());

async function statusOf(key: RouteKey, as: string | undefined): Promise<number> {
  const { method, path } = splitKey(key);
  const rule: RouteRule = ROUTES[key];
  const filled = path.replaceAll(/:[a-z0-9]+/g, "0");
  const body = rule.body ? {} : undefined;
  return (await server.call(method, filled, { as, body })).status;
}

describe("every route is authorised by role on the server", () => {
  it("the table and this list name the same routes, and the server has no other", () => {
    expect([...ROUTE_KEYS].toSorted()).toEqual(Object.keys(EXPECTED).toSorted());
    const bound = server.app.routes
      .filter(({ method, path }) => method !== "ALL" && /^\/(api|feeds)\//.test(path))
      .map(({ method, path }) => `${method} ${path}`);
    expect([...new Set(bound)].toSorted()).toEqual(Object.keys(EXPECTED).toSorted());
  });

  for (const key of ROUTE_KEYS) {
    it(`${key} answers nobody who is signed out, unless it is for anyone`, async () => {
      const status = await statusOf(key, undefined);
      if (EXPECTED[key].includes("anyone")) expect([401, 403]).not.toContain(status);
      else expect(status).toBe(401);
      expect(await statusOf(key, "rb_session=made-up"), "a made-up cookie").toBe(status);
    });

    for (const role of ROLES) {
      const allowed = EXPECTED[key].split(" ").includes(role);
      it(`${key} is ${allowed ? "open" : "closed"} to the role ${role}`, async () => {
        const as = key === "DELETE /api/session" ? await signedInAgain(role) : cookies.get(role);
        const status = await statusOf(key, as);
        if (allowed) expect([401, 403, 500]).not.toContain(status);
        else expect(status).toBe(403);
      });
    }
  }
});

/** Signing out ends a session: not one that the other tests stand on. */
const signedInAgain = (role: Role): Promise<string> =>
  signIn(server, role === "owner" ? "owner" : `the-${role}`);
