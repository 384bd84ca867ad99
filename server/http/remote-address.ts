import type { Context } from "hono";

/**
 * The address at the other end of the socket. Forwarded headers are not believed: anyone can write
 * them, and a limit that believes them limits nobody.
 */
export function remoteAddress(c: Context): string {
  const { incoming } = (c.env ?? {}) as {
    incoming?: { socket?: { remoteAddress?: string } };
  };
  return incoming?.socket?.remoteAddress ?? "in-process";
}
