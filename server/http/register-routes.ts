import { problem } from "@roundbook/schemas";
import type { Context, Hono } from "hono";
import { atOnce } from "../usecases/at-once.ts";
import type { Session } from "../usecases/context.ts";
import { findSession } from "../usecases/find-session.ts";
import { Refusal } from "../usecases/refusal.ts";
import type { AppContext } from "./app-context.ts";
import type { Call, Handler, Handlers } from "./handler.ts";
import { readJson } from "./read-body.ts";
import {
  type Access,
  DEFAULT_LIMIT,
  ROUTE_KEYS,
  ROUTES,
  type RouteKey,
  type RouteRule,
  splitKey,
} from "./route-table.ts";
import { cookieToken } from "./session-cookie.ts";
import { compileRouteChecks } from "./validators.ts";

function admit(who: Access, session: Session | null): void {
  if (who === "anyone") return;
  if (!session) throw new Refusal("signed-out", "signed-out");
  if (!who.includes(session.role))
    throw new Refusal("forbidden", "role-not-allowed", [], { allowed: who });
}

function checkRawType(c: Context, accepted: readonly string[]): void {
  const type = (c.req.header("content-type") ?? "").split(";")[0]?.trim().toLowerCase() ?? "";
  if (!accepted.includes(type))
    throw new Refusal("wrong-type", "wrong-content-type", [
      problem("", "wrong-content-type", { expected: accepted, found: type }),
    ]);
}

function reply(c: Context, rule: RouteRule, value: unknown): Response {
  if (value instanceof Response) return value;
  return value === undefined || rule.reply === 204
    ? c.body(null, 204)
    : c.json(value, rule.reply ?? 200);
}

const checks = compileRouteChecks();

/**
 * Binds every rule of the route table to its handler: session, role, rate, size, depth and form are
 * checked here, in that order, so that no handler can forget one.
 */
export function registerRoutes(app: Hono, ctx: AppContext, handlers: Handlers<RouteKey>): void {
  for (const key of ROUTE_KEYS) {
    const { method, path } = splitKey(key);
    const rule: RouteRule = ROUTES[key];
    const check = checks.get(key);
    const handle = handlers[key] as Handler<RouteKey>;
    app.on(method, path, async (c) => {
      const token = cookieToken(c);
      const session = token === "" ? null : await findSession(ctx, token);
      admit(rule.who, session);
      const retryAfter = session ? ctx.limits.session.take(token) : 0;
      if (retryAfter > 0) throw new Refusal("too-many", "too-many-requests", [], { retryAfter });
      const query = Object.assign(Object.create(null), c.req.query());
      check?.query(query);
      if (rule.raw) checkRawType(c, rule.raw);
      const body = rule.body ? await readJson(c, rule.limit ?? DEFAULT_LIMIT) : undefined;
      check?.body(body);
      const param = (name: string) => c.req.param(name) ?? "";
      const work = async (within: AppContext) => {
        const call = { c, ctx: within, session, token, body, query, param } as Call<RouteKey>;
        return handle(call as never);
      };
      return reply(c, rule, await (rule.atOnce ? atOnce(ctx, work) : work(ctx)));
    });
  }
}
