import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import type { MiddlewareHandler } from "hono";

export type Encoding = "br" | "gzip";

/** The better of the encodings a browser takes; undefined where it takes neither. */
export const encodingFor = (accepts: string | undefined): Encoding | undefined =>
  /\bbr\b/.test(accepts ?? "") ? "br" : /\bgzip\b/.test(accepts ?? "") ? "gzip" : undefined;

/** Smaller replies fit into one packet or two as they are. */
const WORTH_BYTES = 2_048;

const SQUEEZE: Readonly<Record<Encoding, (bytes: ArrayBuffer) => Promise<Uint8Array>>> = {
  br: (bytes) =>
    promisify(brotliCompress)(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } }),
  gzip: (bytes) => promisify(gzip)(bytes, { level: 6 }),
};

/**
 * Compresses what a device reads of a site, off the main thread. The size of a compressed reply
 * tells what it repeats, so only replies that hold no secret and reflect nothing of their request
 * may pass here: what stands in a site's register is for everybody who may ask, and the session
 * travels in the cookie alone.
 */
export const squeezeReplies: MiddlewareHandler = async (c, next) => {
  await next();
  const { res } = c;
  const isJson = res.headers.get("content-type")?.startsWith("application/json") ?? false;
  if (res.status !== 200 || !isJson || res.headers.has("content-encoding")) return;
  res.headers.append("vary", "accept-encoding");
  const encoding = encodingFor(c.req.header("accept-encoding"));
  if (encoding === undefined || c.req.method === "HEAD") return;
  const plain = await res.arrayBuffer();
  const { status, headers } = res;
  const isWorth = plain.byteLength > WORTH_BYTES;
  const bytes = isWorth ? await SQUEEZE[encoding](plain) : new Uint8Array(plain);
  if (isWorth) headers.set("content-encoding", encoding);
  headers.set("content-length", String(bytes.byteLength));
  c.res = undefined;
  c.res = new Response(new Uint8Array(bytes), { status, headers });
};
