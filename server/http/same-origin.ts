import type { MiddlewareHandler } from "hono";
import { Refusal } from "../usecases/refusal.ts";

const SAFE = new Set(["GET", "HEAD", "OPTIONS"]);

const hostOf = (origin: string): string | undefined => {
  try {
    return new URL(origin).host;
  } catch {
    return undefined;
  }
};

/**
 * Refuses state-changing requests that another site caused. Browsers always send one of the two
 * headers with them; a program that sends neither holds no ambient cookie to abuse.
 */
export const sameOrigin: MiddlewareHandler = async (c, next) => {
  if (!SAFE.has(c.req.method)) {
    const site = c.req.header("sec-fetch-site");
    const origin = c.req.header("origin");
    const host = c.req.header("host") ?? new URL(c.req.url).host;
    const foreignSite = site !== undefined && site !== "same-origin" && site !== "none";
    const foreignOrigin = origin !== undefined && hostOf(origin) !== host;
    if (foreignSite || foreignOrigin) throw new Refusal("forbidden", "other-origin");
  }
  await next();
};
