import { createHash } from "node:crypto";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { beginOwn, startServer, type TestServer } from "./testing/server.ts";

let server: TestServer;
let owner: string;
beforeAll(async () => {
  server = await startServer();
  owner = await beginOwn(server);
});
afterAll(() => server.close());

const picture = (size: number) => {
  const bytes = new Uint8Array(size).fill(7);
  bytes.set([0xff, 0xd8, 0xff, 0xe0]);
  return bytes;
};
const sha256 = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");
const put = (hash: string, body: Uint8Array<ArrayBuffer>, type = "image/jpeg") =>
  server.app.request(`/api/evidence/${hash}`, {
    method: "PUT",
    headers: { cookie: owner, "content-type": type },
    body,
  });
const stored = () => readdir(join(server.folder, "evidence"), { recursive: true }).catch(() => []);

describe("evidence", () => {
  it("is kept under its hash, once, and given back as it came", async () => {
    const bytes = picture(5_000);
    const hash = sha256(bytes);
    expect((await put(hash, bytes)).status).toBe(204);
    expect((await put(hash, bytes)).status).toBe(204);
    const reply = await server.call("GET", `/api/evidence/${hash}`, { as: owner });
    expect(new Uint8Array(await reply.arrayBuffer())).toEqual(bytes);
    expect(reply.headers.get("content-type")).toBe("image/jpeg");
    expect(reply.headers.get("cache-control")).toContain("immutable");
    expect(reply.headers.get("x-content-type-options")).toBe("nosniff");
  });

  it("whose bytes have another hash is refused with both, and nothing is kept", async () => {
    const before = await stored();
    const reply = await put("0".repeat(64), picture(900));
    expect(reply.status).toBe(422);
    expect(await reply.json()).toMatchObject({
      code: "hash-differs",
      problems: [{ params: { expected: "0".repeat(64), found: sha256(picture(900)) } }],
    });
    expect(await stored()).toEqual(before);
  });

  it("that is no picture is refused by its bytes, whatever it is called", async () => {
    const page = new TextEncoder().encode("<script>alert(1)</script>");
    expect((await put(sha256(page), page)).status).toBe(415);
    expect((await put(sha256(page), page, "text/html")).status).toBe(415);
    expect((await server.call("GET", `/api/evidence/${sha256(page)}`, { as: owner })).status).toBe(
      404,
    );
  });

  it("above eight megabytes is refused", async () => {
    const bytes = picture(8 * 1024 * 1024 + 1);
    expect((await put(sha256(bytes), bytes)).status).toBe(413);
  });

  it("a hash that is none names nothing", async () => {
    const paths = [
      "..%2f..%2froundbook.db",
      ".%2f..%2froundbook.db",
      "zz%2f..%2f..%2froundbook.db",
    ];
    const far = `${"..%2f".repeat(20)}etc%2fhostname`;
    for (const hash of [...paths, far, "zz", "A".repeat(64)])
      expect((await server.call("GET", `/api/evidence/${hash}`, { as: owner })).status).toBe(404);
  });
});
