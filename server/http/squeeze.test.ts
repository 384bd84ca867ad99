import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { Hono } from "hono";
import { describe, expect, test } from "vitest";
import { squeezeReplies } from "./squeeze.ts";

const ROWS = Array.from({ length: 200 }, (_, at) => ({ number: String(at), description: "Door" }));
const app = new Hono();
app.use("/api/sites/*", squeezeReplies);
app.get("/api/sites/1/bundle", (c) => c.json({ rows: ROWS }, 200, { etag: '"7"' }));
app.get("/api/sites/1/small", (c) => c.json({ rows: [] }));
app.get("/api/sites/1/same", () => new Response(null, { status: 304, headers: { etag: '"7"' } }));
app.get("/api/sites/1/wrong", (c) => c.json({ problems: ROWS }, 400));

const get = (path: string, encoding: string, method = "GET") =>
  app.request(`/api/sites/1/${path}`, { method, headers: { "accept-encoding": encoding } });
const bytesOf = async (reply: Response) => Buffer.from(await reply.arrayBuffer());

describe("what a device reads of a site", () => {
  test("travels compressed as the browser asks, and is the same afterwards", async () => {
    const ways = [
      ["gzip, deflate", "gzip", gunzipSync],
      ["gzip, deflate, br", "br", brotliDecompressSync],
    ] as const;
    for (const [asked, encoding, open] of ways) {
      const reply = await get("bundle", asked);
      expect(reply.headers.get("content-encoding")).toBe(encoding);
      expect(reply.headers.get("vary")).toBe("accept-encoding");
      expect(reply.headers.get("etag")).toBe('"7"');
      const bytes = await bytesOf(reply);
      expect(reply.headers.get("content-length")).toBe(String(bytes.length));
      expect(bytes.length).toBeLessThan(JSON.stringify(ROWS).length / 5);
      expect(JSON.parse(open(bytes).toString())).toEqual({ rows: ROWS });
    }
  });

  test("goes as it is to who takes no encoding, and while it is small", async () => {
    const plain = await get("bundle", "identity");
    expect(plain.headers.get("content-encoding")).toBeNull();
    expect(plain.headers.get("vary")).toBe("accept-encoding");
    expect(await plain.json()).toEqual({ rows: ROWS });
    const small = await get("small", "gzip");
    expect(small.headers.get("content-encoding")).toBeNull();
    expect(await small.json()).toEqual({ rows: [] });
  });

  test("what is no reading of a site stays as it was", async () => {
    const same = await get("same", "gzip");
    expect([same.status, (await bytesOf(same)).length]).toEqual([304, 0]);
    const wrong = await get("wrong", "gzip");
    expect([wrong.status, wrong.headers.get("content-encoding")]).toEqual([400, null]);
    expect(await wrong.json()).toEqual({ problems: ROWS });
  });
});
