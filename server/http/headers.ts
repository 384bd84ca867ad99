import type { MiddlewareHandler } from "hono";

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "base-uri 'none'",
].join("; ");

const HEADERS: Readonly<Record<string, string>> = {
  "content-security-policy": POLICY,
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "x-frame-options": "DENY",
  "permissions-policy": "geolocation=(), microphone=(), payment=(), usb=()",
};

/** A request counts as https when the server itself or the proxy in front of it speaks TLS. */
export const isHttps = (url: string, forwardedProto: string | undefined): boolean =>
  url.startsWith("https:") || forwardedProto?.split(",")[0]?.trim() === "https";

/** Every reply, errors and files included, carries the same protection. */
export const securityHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(HEADERS)) c.res.headers.set(name, value);
  if (isHttps(c.req.url, c.req.header("x-forwarded-proto")))
    c.res.headers.set("strict-transport-security", "max-age=31536000");
  if (c.req.path.startsWith("/api/") && !c.res.headers.has("cache-control"))
    c.res.headers.set("cache-control", "no-store");
};
